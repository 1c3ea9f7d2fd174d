//! Owns what every printed word means: outcomes, severities, grades, roles, findings, screening items,
//! arterial values, numbers, grades of an excess, schemes and classes, rule sets, landmarks, terms, keys
//! of files; and pages on hazards, alarms, screening, the bench test and the strip pull.
//!
//! Decides nothing. Findings, items, numbers and schemes are read where they are applied, so that what
//! is explained is what is done; the glossary holds no second text of them.
//!
//! Source: each entry names its own.

mod kind;
mod entry;
mod glossary;
mod fill;
mod normal;
mod of_findings;
mod of_rules;
mod of_numbers;
mod of_sets;
mod of_schemes;
mod of_keys;
mod catalogue;
mod hazards;
mod alarms;
mod bench;
mod screening;
mod topic;
mod lookup;

pub use alarms::{AlarmTable, alarm_tables};
pub use catalogue::Catalogue;
pub use entry::Entry;
pub use glossary::{Glossary, Label, Lead, Word};
pub use hazards::{Control, Hazard, Matrix};
pub use kind::Kind;
pub use lookup::{Answer, all, index, lookup};
pub use topic::Topic;
