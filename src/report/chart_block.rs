//! Owns a chart on a limb as the report holds it.

use serde::Serialize;

use super::Figure;
use crate::assessment::Outcome;

/// A chart on a limb.
#[derive(Clone, Debug, Serialize)]
pub struct ChartBlock {
    /// Its label as its file states it.
    pub label: String,
    /// The label as printed: told apart by its file where another chart of the run bears the same.
    pub printed: String,
    /// Its file.
    pub file: String,
    /// Which part of a set it belongs to.
    pub part: usize,
    /// Whether it is the one of its part that counts.
    pub counted: bool,
    /// Its style.
    pub style: Option<String>,
    /// The class claimed.
    pub claim: Option<ClassBlock>,
    /// Materials; null = not known.
    pub materials: Option<Vec<String>>,
    /// Whether it has a part for hand or foot; null = not stated.
    pub hand_part: Option<bool>,
    /// Its outcome.
    pub outcome: Outcome,
    /// Other outcomes that hold for it.
    pub also: Vec<Outcome>,
    /// `size`, `between`, `measure-again`, `made-to-measure`, `not-judged`.
    pub verdict: &'static str,
    /// The chosen size, by its place.
    pub size: Option<usize>,
    /// Its length variant.
    pub variant: Option<String>,
    /// What is known of the length, where no variant serves.
    pub length_note: Option<String>,
    /// The nearest size, by its place.
    pub nearest: Option<usize>,
    /// Both of a pair, by their places.
    pub between: Vec<usize>,
    /// Which of the pair the chart's own rule picks.
    pub picked: Option<usize>,
    /// The most chosen other size, by its place.
    pub runner_up: Option<usize>,
    /// The chance that a second measurement would pick the same size.
    pub same_again_chance: Option<Figure>,
    /// Every size.
    pub sizes: Vec<SizeBlock>,
    /// What each measure alone asks for.
    pub wanted: Vec<WantedBlock>,
    /// The chart's one line.
    pub line: String,
    /// The sizes whose flat widths were measured on the garment itself.
    pub measured: Vec<OwnWidths>,
    /// The size to obtain as a garment file to fill in with its flat widths, where that is the next step.
    pub paste: Option<String>,
}

/// A class of a scheme.
#[derive(Clone, Debug, Serialize)]
pub struct ClassBlock {
    /// The scheme's id.
    pub scheme: String,
    /// The scheme as printed.
    pub scheme_name: String,
    /// The class.
    pub class: String,
    /// The class with its band, as printed: `class 2 (23 to 32 mmHg)`.
    pub printed: String,
    /// Low end, mmHg.
    pub low: Option<f64>,
    /// High end, mmHg.
    pub high: Option<f64>,
}

/// A size against the limb.
#[derive(Clone, Debug, Serialize)]
pub struct SizeBlock {
    /// Its label.
    pub size: String,
    /// `inside`, `outside`, `open`.
    pub verdict: &'static str,
    /// Whether a certain rise takes it out.
    pub reversed: bool,
    /// The chance that every girth lies inside.
    pub inside_chance: Option<Figure>,
    /// Every girth.
    pub measures: Vec<MeasureBlock>,
}

/// A girth against a size.
#[derive(Clone, Debug, Serialize)]
pub struct MeasureBlock {
    /// The landmark's word.
    pub measure: &'static str,
    /// The girth as compared.
    pub girth_cm: Option<Figure>,
    /// Low end; null = open.
    pub low_cm: Option<Figure>,
    /// High end; null = open.
    pub high_cm: Option<Figure>,
    /// Distance to the nearer end, negative outside.
    pub margin_cm: Option<Figure>,
    /// `inside`, `close`, `outside`, `missing`.
    pub verdict: &'static str,
    /// `tight` or `loose`.
    pub direction: Option<&'static str>,
}

/// What a measure alone asks for.
#[derive(Clone, Debug, Serialize)]
pub struct WantedBlock {
    /// The landmark's word.
    pub measure: &'static str,
    /// Sizes, by their places.
    pub sizes: Vec<usize>,
}

/// A size whose flat widths were measured on the garment itself.
#[derive(Clone, Debug, Serialize)]
pub struct OwnWidths {
    /// The size, by its place in the list of sizes.
    pub size: usize,
    /// The garment file.
    pub file: String,
}
