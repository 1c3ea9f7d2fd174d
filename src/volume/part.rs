//! Owns one part of the limb: below or above the joint.

use super::{Excess, LimbVolume};

/// Which part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PartOfLimb {
    /// From the reference to the joint.
    Distal,
    /// From the joint on.
    Proximal,
}

impl PartOfLimb {
    /// `distal` or `proximal`.
    pub fn word(self) -> &'static str {
        match self {
            Self::Distal => "distal",
            Self::Proximal => "proximal",
        }
    }
}

/// One part of the limb. Both parts add up to the whole.
#[derive(Clone, Copy, Debug)]
pub struct Part {
    /// Which.
    pub part: PartOfLimb,
    /// The measured limb's.
    pub measured: LimbVolume,
    /// The other limb's; none where it is not compared.
    pub other: Option<LimbVolume>,
    /// What the affected limb has more there.
    pub excess: Option<Excess>,
}
