//! Owns the pressure of one garment along a limb as the report holds it.

use serde::Serialize;

use super::Figure;
use crate::anatomy::Landmark;
use crate::gradient::GradientBasis;

/// The pressure of one garment along a limb.
#[derive(Clone, Debug, Serialize)]
pub struct PressureBlock {
    /// The chart, by its place within the limb; null = a garment file.
    pub chart: Option<usize>,
    /// The size, by its place in the chart.
    pub size: Option<usize>,
    /// The size's label.
    pub size_label: Option<String>,
    /// The garment's label.
    pub garment: String,
    /// What it rests on; null = nothing known.
    pub basis: Option<GradientBasis>,
    /// Whether nothing but bandages is worn: a pull, not a knit.
    pub pulled: bool,
    /// Every mark with a relaxed girth or a reading, distal to proximal.
    pub marks: Vec<MarkBlock>,
    /// Readings at landmarks where nothing is estimated, distal to proximal.
    pub read_only: Vec<ReadBlock>,
    /// The reference.
    pub reference: ReferenceBlock,
    /// The band at the upper edge.
    pub top_edge: Option<TopEdgeBlock>,
    /// Twice the pressure at the most proximal mark: what a fold there would press.
    pub folded_edge_mmhg: Option<Figure>,
    /// The pressure between the marks, drawn and not judged.
    pub profile: Vec<ProfileBlock>,
    /// What is not in the figures, in sentences.
    pub notes: Vec<String>,
}

/// A reading where nothing is estimated.
#[derive(Clone, Debug, Serialize)]
pub struct ReadBlock {
    /// The landmark.
    pub landmark: Landmark,
    /// The mean of what a sensor read there.
    pub reading_mmhg: Option<Figure>,
}

/// One mark.
#[derive(Clone, Debug, Serialize)]
pub struct MarkBlock {
    /// The landmark.
    pub landmark: Landmark,
    /// Where along the limb.
    pub at_cm: Figure,
    /// The limb's girth.
    pub girth_cm: Figure,
    /// The garment's relaxed girth.
    pub relaxed_cm: Option<Figure>,
    /// Stretch.
    pub stretch_percent: Option<Figure>,
    /// Tension of all layers.
    pub tension_n_per_m: Option<Figure>,
    /// Pressure.
    pub pressure_mmhg: Option<Figure>,
    /// Lower bound beyond the tested stretch, mmHg.
    pub bound: Option<Figure>,
    /// SD.
    pub sd_mmhg: Option<Figure>,
    /// Low end of 95 % by tape, ruler and fabric.
    pub low_mmhg: Option<Figure>,
    /// High end.
    pub high_mmhg: Option<Figure>,
    /// Low end with the spread between wearers and against a sensor.
    pub low_worn_mmhg: Option<Figure>,
    /// High end.
    pub high_worn_mmhg: Option<Figure>,
    /// What a sensor read there.
    pub reading_mmhg: Option<Figure>,
    /// Whether it is judged in the fall.
    pub judged: bool,
    /// What this row shows against the row above it, in words.
    pub against_above: String,
}

/// The reference.
#[derive(Clone, Debug, Serialize)]
pub struct ReferenceBlock {
    /// Wrist or ankle, or what the scheme names.
    pub landmark: Landmark,
    /// Pressure there.
    pub pressure_mmhg: Option<Figure>,
    /// The claimed scheme's id.
    pub scheme: Option<String>,
    /// Its name as printed: a class is never said without its scheme.
    #[serde(skip)]
    pub scheme_name: Option<String>,
    /// Where it lies among the classes: `2`, `between 1 and 2`.
    pub class: Option<String>,
    /// The class claimed.
    pub claimed_class: Option<String>,
    /// Chance of it by tape, ruler and fabric.
    pub claimed_chance: Option<Figure>,
    /// Chance of it with the wider range.
    pub claimed_chance_worn: Option<Figure>,
    /// Change of pressure with girth, slow and resting.
    pub stiffness_mmhg_per_cm: Option<Figure>,
}

/// The band at the upper edge.
#[derive(Clone, Debug, Serialize)]
pub struct TopEdgeBlock {
    /// Where.
    pub landmark: Landmark,
    /// Its pressure.
    pub edge_mmhg: Option<Figure>,
    /// The garment's pressure there.
    pub garment_mmhg: Option<Figure>,
    /// The chance that the edge presses more.
    pub chance: Option<Figure>,
    /// Whether the edge is known by its least only.
    pub edge_is_bound: bool,
    /// Whether the garment is.
    pub garment_is_bound: bool,
}

/// A drawn point.
#[derive(Clone, Debug, Serialize)]
pub struct ProfileBlock {
    /// Where along the limb, cm.
    pub at_cm: f64,
    /// mmHg.
    pub pressure_mmhg: Option<f64>,
}
