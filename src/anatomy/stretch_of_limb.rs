//! Owns a stretch of limb between two landmarks, written `wrist to axilla`.

use super::{Landmark, Limb};

/// From a distal landmark to a more proximal one of the same limb.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Between {
    /// The distal end.
    pub from: Landmark,
    /// The proximal end.
    pub to: Landmark,
}

impl Between {
    /// Reads `wrist to axilla`; none unless both ends belong to `limb` and run toward the trunk.
    pub fn parse(limb: Limb, text: &str) -> Option<Self> {
        let (from, to) = text.split_once(" to ")?;
        let (from, to) = (Landmark::parse(limb, from)?, Landmark::parse(limb, to)?);
        (from < to).then_some(Self { from, to })
    }

    /// `wrist to axilla`.
    pub fn name(self) -> String {
        format!("{} to {}", self.from.name(), self.to.name())
    }
}
