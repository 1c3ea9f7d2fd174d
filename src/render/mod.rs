//! Owns the forms of a report: pure functions from the report.
//!
//! Recomputes nothing, omits no finding.

mod json;
mod text;

pub use json::json;
pub use text::{MOST_COLUMNS, Page, bar_scale, pressure_bar, text};
