//! Owns whose clinical assessment of a leg's arteries counts.

use super::{Basis, ClearRule, Role};

/// The clinical assessment of the arteries.
#[derive(Clone, Debug)]
pub struct AssessmentRule {
    /// Whose assessment counts.
    pub by: Vec<Role>,
    /// Who may clear one that is in doubt, always with a cap.
    pub cleared_by: Vec<ClearRule>,
    /// What it rests on.
    pub basis: Basis,
    /// Where it was read.
    pub source: String,
}
