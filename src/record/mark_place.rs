//! Owns which mark of a limb is meant.

use super::Mark;
use crate::anatomy::Landmark;
use crate::quantity::Position;

/// A mark by its landmark, or by its position alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct MarkPlace {
    /// Where along the limb.
    pub at: Position,
    /// The landmark; none for a serial mark.
    pub landmark: Option<Landmark>,
}

impl MarkPlace {
    /// The place of a mark.
    pub fn of(mark: &Mark) -> Self {
        Self { at: mark.at, landmark: mark.landmark }
    }

    /// Whether it is the same mark of the limb: of the same landmark, or serial ones at the same position.
    pub fn is_same(self, other: Self) -> bool {
        match (self.landmark, other.landmark) {
            (Some(one), Some(other)) => one == other,
            (None, None) => self.at == other.at,
            _ => false,
        }
    }
}
