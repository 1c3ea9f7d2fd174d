//! Owns how a mark is told apart from the others of its limb.

use crate::anatomy::Landmark;
use crate::quantity::Position;

/// A mark's place: its landmark, or for a serial mark its position.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// At a landmark.
    Landmark(Landmark),
    /// A serial mark.
    At(Position),
}

impl Place {
    /// The landmark, if it is one.
    pub fn landmark(self) -> Option<Landmark> {
        match self {
            Self::Landmark(one) => Some(one),
            Self::At(_) => None,
        }
    }
}
