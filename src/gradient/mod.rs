//! Owns the judgement whether pressure falls along the limb toward the trunk: three chances over all
//! marks at once, their grade, the mark to look at, and the measurement that would decide.
//!
//! Knows numbers only: no record, no garment, no words for people.
//!
//! Source: the chances are derived (independent normal errors of the logarithm of the pressure); what
//! counts as a rise follows Best 2000 (published); the levels are house rules, each in [`FallRules`].

mod basis;
mod grade;
mod rules;
mod curve;
mod mark;
mod setting;
mod nodes;
mod normal;
mod point;
mod state;
mod rise;
mod trend;
mod pairs;
mod chances;
mod bound;
mod fall;
mod judge;
mod decide;
mod turns;

pub use basis::GradientBasis;
pub use bound::held_against;
pub use chances::Chances;
pub use curve::{Knit, TensionCurve};
pub use decide::{Action, Decide, decide};
pub use fall::{Fall, Pair};
pub use grade::Grade;
pub use judge::{judge, judge_grade};
pub use mark::{FallMark, KnitPart, MarkKind, Part, WrapPart};
pub use rise::rise_somewhere;
pub use rules::FallRules;
pub use setting::{Band, FallSetting};
pub use turns::{Turn, turns, turns_of_all};
