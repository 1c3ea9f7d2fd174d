//! Owns the closed catalogue of what the program can say: every finding, screening question,
//! arterial limit, pressure scheme, number, outcome, severity and grade, with its rule, basis and
//! source; and the matrix of hazards and controls, and the measured rates of alarms.
//!
//! Judges no record. Numbers come from the rules and schemes in use, so that what is explained is
//! what is applied.
//!
//! Source: each entry names its own.

mod entry;
mod of_one_garment;
mod of_findings;
mod of_outcomes;
mod of_rules;
mod of_schemes;
mod catalogue;
mod hazards;
mod alarms;
mod bench;
mod text;

pub use alarms::{AlarmRates, MEASURED_RATES};
pub use bench::bench_text;
pub use catalogue::{Catalogue, TOPICS};
pub use entry::{Entry, Kind};
pub use hazards::{Control, Hazard, Matrix};
pub use text::{alarms_text, entry_markdown, entry_text, hazards_text, index_text, markdown, screening_text};
