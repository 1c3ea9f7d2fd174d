//! Owns the rules that a user may replace: screening items, arterial limits, the numbers of the
//! house, plausible bands and severity sets, each with its basis.
//!
//! Judges nothing; a room that judges takes its limits from here.
//!
//! Source: every value carries its own basis and source in `garment-tables/rules/`.

mod basis;
mod severity;
mod urgency;
mod role;
mod item_rule;
mod arterial_rule;
mod number;
mod plausible;
mod severity_set;
mod raised;
mod set;
mod read;

pub use arterial_rule::{ArterialRule, ArterialValue};
pub use basis::Basis;
pub use item_rule::{Group, ItemRule, Limbs};
pub use number::{Number, NumberId};
pub use plausible::{Nearness, PlausibleBand, PlausibleRatio};
pub use raised::{RAISABLE, Raised};
pub use read::{SHIPPED_RULES, read_rules, read_shipped_rules};
pub use role::Role;
pub use set::{ObservedRule, Rules};
pub use severity::Severity;
pub use severity_set::{ExcessMeasure, Grade, SeveritySet};
pub use urgency::Urgency;
