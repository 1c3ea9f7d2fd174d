//! Owns on which limbs something is asked.

use crate::anatomy::Limb;

/// On which limbs a question is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Limbs {
    /// One kind of limb.
    Only(Limb),
    /// Arms and legs.
    Both,
}

impl Limbs {
    /// Whether it is asked on `limb`.
    pub fn include(self, limb: Limb) -> bool {
        match self {
            Self::Only(only) => only == limb,
            Self::Both => true,
        }
    }

    /// `arm`, `leg`, `both`.
    pub fn word(self) -> &'static str {
        match self {
            Self::Only(limb) => limb.name(),
            Self::Both => "both",
        }
    }
}
