//! Owns the whole check: it calls the rooms above in order and makes the one decision: outcome, what
//! it concerns, urgency, next step, who acts.
//!
//! Neither rounds nor formats.

mod outcome;
mod decision;

pub use decision::{Decision, Subject};
pub use outcome::Outcome;
