//! Owns which limb and which side.

use super::Landmark;

/// Arm or leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Limb {
    /// From the hand to the axilla.
    Arm,
    /// From the forefoot to the groin.
    Leg,
}

impl Limb {
    /// `arm` or `leg`.
    pub fn name(self) -> &'static str {
        match self {
            Self::Arm => "arm",
            Self::Leg => "leg",
        }
    }

    /// Reads `arm` or `leg`.
    pub fn parse(text: &str) -> Option<Self> {
        match text.trim() {
            "arm" => Some(Self::Arm),
            "leg" => Some(Self::Leg),
            _ => None,
        }
    }

    /// The landmark that a pressure class refers to: wrist or ankle (published; see the schemes).
    pub fn reference(self) -> Landmark {
        match self {
            Self::Arm => Landmark::Wrist,
            Self::Leg => Landmark::Ankle,
        }
    }

    /// The joint that is exempt from the comparison of neighbours: elbow or knee (published).
    pub fn joint(self) -> Landmark {
        match self {
            Self::Arm => Landmark::Elbow,
            Self::Leg => Landmark::Knee,
        }
    }

    /// What hangs at the end: hand or foot.
    pub fn extremity(self) -> &'static str {
        match self {
            Self::Arm => "hand",
            Self::Leg => "foot",
        }
    }
}

/// Left or right.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Side {
    /// The client's left.
    Left,
    /// The client's right.
    Right,
}

impl Side {
    /// `left` or `right`.
    pub fn name(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }

    /// The other one.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }

    /// Reads `left` or `right`.
    pub fn parse(text: &str) -> Option<Self> {
        match text.trim() {
            "left" => Some(Self::Left),
            "right" => Some(Self::Right),
            _ => None,
        }
    }
}
