//! Owns the whole check: it calls the rooms above in order and makes the one decision: outcome, what
//! it concerns, urgency, next step, who acts.
//!
//! Neither rounds nor formats.

mod outcome;
mod decision;
mod weigh;

pub use decision::{Decision, Subject};
pub use outcome::Outcome;
pub use weigh::{ChartOutcomes, counted, limb_outcome};
