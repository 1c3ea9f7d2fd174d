//! Owns one segment of the limb: a cut cone between two marks, or the disc around one.

use super::{Excess, LimbVolume, Place};

/// One segment.
#[derive(Clone, Copy, Debug)]
pub struct Segment {
    /// Its distal mark; of a disc, its only one.
    pub from: Place,
    /// Its proximal mark; of a disc, the same one.
    pub to: Place,
    /// The measured limb's.
    pub measured: LimbVolume,
    /// The other limb's; none where it is not compared.
    pub other: Option<LimbVolume>,
    /// What the affected limb has more there.
    pub excess: Option<Excess>,
}
