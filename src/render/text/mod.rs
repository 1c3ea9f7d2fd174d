//! Owns the report for a terminal, 60 to 120 columns, without colour.

mod page;
mod bar;
mod findings;
mod sizes;
mod along;
mod volume;
mod whole;

pub(super) use along::print_garment as print_along;
pub use bar::{bar_scale, pressure_bar};
pub(super) use findings::print as print_findings;
pub use page::{MOST_COLUMNS, Page};
pub use whole::text;
pub(super) use whole::{head as print_head, tail as print_tail};
