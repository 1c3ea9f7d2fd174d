//! Owns the girth of one mark beside the other limb's.

use super::Place;
use crate::quantity::Girth;

/// A mark's girth, and the other limb's at the same place.
#[derive(Clone, Copy, Debug)]
pub struct GirthPair {
    /// Where.
    pub place: Place,
    /// Where along the measured limb, cm.
    pub at_cm: f64,
    /// The measured limb's girth.
    pub measured: Girth,
    /// The other limb's; none where it has no mark there.
    pub other: Option<Girth>,
    /// Affected minus other, tenths of a millimetre; none without an other girth, or where both or
    /// neither are affected. 2 cm or more is a common criterion (published: NCI PDQ).
    pub difference_tenths: Option<i64>,
}
