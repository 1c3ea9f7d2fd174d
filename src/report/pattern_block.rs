//! Owns a garment worked out for a wanted pressure, as the report holds it.

use serde::Serialize;

use super::Figure;
use crate::anatomy::Landmark;

/// A garment worked out for a wanted pressure.
#[derive(Clone, Debug, Serialize)]
pub struct PatternBlock {
    /// Its label.
    pub label: String,
    /// The fabric.
    pub fabric: String,
    /// Layers.
    pub layers: u32,
    /// What was aimed at, in words.
    pub target: String,
    /// Its marks, distal to proximal.
    pub marks: Vec<PatternMark>,
    /// What the estimate of the garment confirms, in a sentence.
    pub confirmed: String,
}

/// One mark of it.
#[derive(Clone, Debug, Serialize)]
pub struct PatternMark {
    /// Where.
    pub landmark: Landmark,
    /// The limb's girth.
    pub girth_cm: Figure,
    /// Wanted.
    pub wanted_mmhg: Figure,
    /// Share of the reference, %.
    pub residual_percent: Option<Figure>,
    /// The relaxed girth that gives it.
    pub relaxed_cm: Option<Figure>,
    /// Half of it.
    pub flat_width_cm: Option<Figure>,
    /// Stretch of the garment, %.
    pub stretch_percent: Option<Figure>,
    /// Reduction of the limb's girth, %.
    pub reduction_percent: Option<Figure>,
    /// What 0.35 cm of tape error would change, mmHg.
    pub tape_mmhg: Option<Figure>,
    /// What the sewing tolerance would change, mmHg.
    pub sewing_mmhg: Option<Figure>,
}
