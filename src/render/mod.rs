//! Owns the forms of a report: pure functions from the report.
//!
//! Recomputes nothing, omits no finding.

mod json;
mod text;
mod garment;
mod paper;
pub mod sheet;
mod html;
mod plain;
#[cfg(feature = "pdf")]
mod pdf;

pub use garment::{fabric_text, gradient_text, pattern_text};
pub use html::html;
pub use json::{fabric_json, json};
pub use paper::Paper;
#[cfg(feature = "pdf")]
pub use pdf::{PdfFault, pdf};
pub use plain::plain;
pub use text::{MOST_COLUMNS, Page, bar_scale, pressure_bar, text};
