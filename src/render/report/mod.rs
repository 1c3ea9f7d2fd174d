//! Owns the report for a terminal as blocks: what was decided, findings, sizes, the fall, volume,
//! course, screening, limits.
//!
//! Recomputes nothing and omits no finding.

mod head;
mod findings;
mod sizes;
mod along;
mod volume;
mod screening;
mod pattern;
mod whole;

pub use whole::terminal_report;
