//! Owns the findings of the house whose severity a rules file may raise.

use super::{Basis, Severity};

/// The house rules on shape that a rules file may raise, by the finding's id.
pub const RAISABLE: [&str; 3] = ["girth-falls", "slope-steep", "sizes-apart"];

/// A raised finding.
#[derive(Clone, Debug)]
pub struct Raised {
    /// The finding's id, one of [`RAISABLE`].
    pub finding: &'static str,
    /// What it weighs now.
    pub severity: Severity,
    /// What that rests on.
    pub basis: Basis,
    /// Why.
    pub why: String,
}
