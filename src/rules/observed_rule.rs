//! Owns one question about the limb itself.

use super::{Basis, Limbs};

/// A question about the limb itself, answered under `observed`.
#[derive(Clone, Debug)]
pub struct ObservedRule {
    /// Its key in the record.
    pub key: String,
    /// Where it is asked.
    pub limbs: Limbs,
    /// The question.
    pub question: String,
    /// What it rests on.
    pub basis: Basis,
    /// Where it was read.
    pub source: String,
}
