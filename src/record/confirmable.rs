//! Owns what a word of `confirmed` answers.

use crate::anatomy::Landmark;

/// The question that a word of `confirmed` answers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Confirmable {
    /// An unusual girth: it was measured again and holds.
    Mark(Landmark),
    /// The affected side is not the limb that is fitted.
    Affected,
    /// The affected limb is thinner than the other one.
    Thinner,
    /// Stated lengths differ from the positions.
    Lengths,
    /// Both limbs' marks stand at different positions.
    Positions,
    /// A stated index differs from its pressures.
    Arterial,
    /// The client's label looks like a name.
    Client,
}
