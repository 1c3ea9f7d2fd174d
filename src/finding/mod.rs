//! Owns the closed list of findings: id, severity, place, figures, one sentence, basis.
//!
//! Creates none itself: `assessment` decides that one holds and calls its constructor here.
//!
//! Source: each finding names its basis.

mod id;
mod place;
mod content;
mod of_record;
mod of_change;
mod of_screening;
mod of_sizing;
mod of_pressure;
mod of_gradient;
mod words;

pub use content::{ClearedBy, Finding};
pub use id::FindingId;
pub use of_record::SHOWN_SLIPS;
pub use place::FindingPlace;
pub use words::{cm, mmhg_words, percent_words};
