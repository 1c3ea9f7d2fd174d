//! Owns the rules that a user may replace: screening groups and items, who may clear them, arterial
//! limits, materials, the numbers of the house, plausible bands and grades, each with its basis.
//!
//! Judges nothing; a room that judges takes its limits from here.
//!
//! Source: every value carries its own basis and source in `garment-tables/rules/`.

mod basis;
mod severity;
mod urgency;
mod role;
mod limbs;
mod validity;
mod group;
mod clear_rule;
mod item_rule;
mod arterial_rule;
mod assessment_rule;
mod observed_rule;
mod material;
mod number;
mod tape_sd;
mod plausible;
mod severity_set;
mod cutoff;
mod raised;
mod lowered;
mod set;
mod read_item;
mod read_arterial;
mod read_number;
mod read_tape_sd;
mod read_tables;
mod read_plausible;
mod compare;
mod read;

pub use arterial_rule::{ArterialRule, ArterialValue, ArterialWhen};
pub use assessment_rule::AssessmentRule;
pub use basis::Basis;
pub use clear_rule::{ClearRule, ClearWhen, FindingRule};
pub use cutoff::Cutoff;
pub use group::{Group, GroupRule};
pub use item_rule::{AnsweredBy, ItemRule, WeighWhen, WeighsElse};
pub use limbs::Limbs;
pub use lowered::{Lowered, LoweredWhat};
pub use material::{AllergyKind, Material};
pub use number::{Number, NumberId, Written};
pub use observed_rule::ObservedRule;
pub use plausible::{Nearness, PlausibleBand, PlausibleRatio};
pub use raised::{RAISABLE, Raised};
pub use read::{SHIPPED_RULES, read_rules, read_shipped_rules};
pub use role::Role;
pub use set::Rules;
pub use severity::Severity;
pub use severity_set::{ExcessMeasure, Grade, SeveritySet};
pub use tape_sd::{TapeError, TapeSd, TapeSdRule};
pub use urgency::Urgency;
pub use validity::Validity;
