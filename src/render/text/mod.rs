//! Owns the report for a terminal, 60 to 120 columns, without colour.

mod page;
mod bar;
mod findings;
mod sizes;
mod along;
mod volume;
mod whole;

pub use bar::{bar_scale, pressure_bar};
pub use page::{MOST_COLUMNS, Page};
pub use whole::text;
