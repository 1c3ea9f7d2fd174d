//! Owns the limb as the estimate sees it.

use crate::anatomy::{Landmark, Limb};
use crate::record::Mark;

/// A measured limb.
#[derive(Clone, Copy, Debug)]
pub struct OnLimb<'a> {
    /// Arm or leg.
    pub limb: Limb,
    /// Its marks, distal to proximal.
    pub marks: &'a [Mark],
}

impl<'a> OnLimb<'a> {
    /// The mark of a landmark.
    pub fn mark(&self, landmark: Landmark) -> Option<&'a Mark> {
        self.marks.iter().find(|mark| mark.landmark == Some(landmark))
    }

    /// The marks that carry a landmark.
    pub(super) fn named(&self) -> impl Iterator<Item = (Landmark, &'a Mark)> + use<'a> {
        self.marks.iter().filter_map(|mark| Some((mark.landmark?, mark)))
    }
}

/// How many tape values a mark is the mean of.
pub(super) fn tapes(mark: &Mark) -> u32 {
    u32::try_from(1 + mark.again.len()).unwrap_or(u32::MAX)
}
