//! Owns the course of a client's limbs over the visits.

use super::{LimbCourse, WeightChange};

/// The course over the visits.
#[derive(Clone, Debug)]
pub struct Course {
    /// The records in order of time, by their places in the list that was given; the last is judged.
    pub order: Vec<usize>,
    /// Each limb of the newest record, in its order.
    pub limbs: Vec<LimbCourse>,
    /// A change of weight that asks for measuring again.
    pub weight: Option<WeightChange>,
}

impl Course {}
