//! Owns the fall along a limb as the report holds it.

use serde::Serialize;

use super::Figure;
use crate::anatomy::Landmark;
use crate::gradient::{Grade, GradientBasis};

/// The fall of one garment along a limb.
#[derive(Clone, Debug, Serialize)]
pub struct GradientBlock {
    /// The chart, by its place within the limb; null = a garment file.
    pub chart: Option<usize>,
    /// The size, by its place in the chart.
    pub size: Option<usize>,
    /// The size's label.
    pub size_label: Option<String>,
    /// The garment's label.
    pub garment: String,
    /// What it rests on.
    pub basis: Option<GradientBasis>,
    /// The grade of a rise; null = a garment that has no fall.
    pub grade: Option<Grade>,
    /// Whether it is judged; null = a garment that has no fall.
    pub judged: Option<bool>,
    /// The graded chance of a rise.
    pub chance: Option<Figure>,
    /// Whether that chance is the least that it can be: of one mark beyond the tested stretch against one below it.
    pub chance_is_bound: bool,
    /// The chance of a rise of a tenth or more somewhere.
    pub rise_somewhere: Option<Figure>,
    /// The same for an even fall measured alike.
    pub usual: Option<Figure>,
    /// Chance that the trend rises, lowest.
    pub trend_low: Option<Figure>,
    /// Highest.
    pub trend_high: Option<Figure>,
    /// Chance that the top lies above the reference, lowest.
    pub end_low: Option<Figure>,
    /// Highest.
    pub end_high: Option<Figure>,
    /// The highest chance of any rise between two marks.
    pub any_rise: Option<Figure>,
    /// The mark to look at.
    pub place: Option<Landmark>,
    /// Against which.
    pub against: Option<Landmark>,
    /// The exponents of the knits that the fall by stretch takes; [] = none is known, or it rests on a curve.
    pub exponents: Vec<ExponentBlock>,
    /// The same as a sentence.
    pub exponents_words: Option<String>,
    /// Each mark against the one below it.
    pub pairs: Vec<PairBlock>,
    /// What would decide.
    pub decide: Vec<DecideBlock>,
    /// What the grade would be after a strip pull, by exponent; [] = the same whatever it gave, or no pull tells.
    pub after_strip_pull: Vec<TurnBlock>,
    /// The same as a sentence.
    pub after_strip_pull_words: Option<String>,
    /// Residual pressures.
    pub residual: Vec<ResidualBlock>,
    /// The one sentence.
    pub sentence: String,
    /// Whether nothing but bandages is worn: a pull, not a knit.
    pub pulled: bool,
    /// Readings against estimate: what the other basis says, where both are known.
    pub beside: Option<BesideBlock>,
}

/// A mark against the one below it.
#[derive(Clone, Debug, Serialize)]
pub struct PairBlock {
    /// The distal mark.
    pub distal: Landmark,
    /// The proximal mark.
    pub proximal: Landmark,
    /// How much more presses at the proximal one.
    pub rise_mmhg: Option<Figure>,
    /// Its SD.
    pub sd_mmhg: Option<Figure>,
}

/// What would decide.
#[derive(Clone, Debug, Serialize)]
pub struct DecideBlock {
    /// Which measurement.
    pub action: &'static str,
    /// Where.
    pub landmark: Option<Landmark>,
    /// Of which piece, by its label, where several are worn; null otherwise.
    pub piece: Option<String>,
    /// The chance that it decides.
    pub chance: Option<Figure>,
    /// In words.
    pub words: String,
}

/// Exponents of one grade.
#[derive(Clone, Debug, Serialize)]
pub struct TurnBlock {
    /// The lowest.
    pub low: Option<Figure>,
    /// The highest.
    pub high: Option<Figure>,
    /// The grade; `possible` stands for `none` too.
    pub grade: Grade,
}

/// The exponent of a knit.
#[derive(Clone, Debug, Serialize)]
pub struct ExponentBlock {
    /// The fabric's label.
    pub fabric: String,
    /// The exponent.
    pub value: Option<Figure>,
    /// Its SD, stated or by the lengths read; null = not known.
    pub sd: Option<Figure>,
    /// Whether a strip pull gave it; otherwise the file states it.
    pub by_pull: bool,
}

/// A residual pressure against its limits.
#[derive(Clone, Debug, Serialize)]
pub struct ResidualBlock {
    /// Where.
    pub landmark: Landmark,
    /// Share of the base point, %.
    pub percent: Option<Figure>,
    /// Low limit, %.
    pub low: Option<f64>,
    /// High limit, %.
    pub high: Option<f64>,
    /// Whether it lies inside; null = no limit, or nothing estimated.
    pub inside: Option<bool>,
}

/// What the other basis says.
#[derive(Clone, Debug, Serialize)]
pub struct BesideBlock {
    /// Which basis.
    pub basis: GradientBasis,
    /// Its grade.
    pub grade: Option<Grade>,
    /// Its graded chance.
    pub chance: Option<Figure>,
    /// Whether that is the least that it can be.
    pub chance_is_bound: bool,
    /// Whether the two contradict each other.
    pub contradicts: bool,
    /// In words.
    pub words: String,
}
