//! Owns what is worked out for one chart on one limb.

use super::{ChartOutcomes, Outcome};
use crate::estimate::Estimated;
use crate::garment::{Chart, Outfit};
use crate::gradient::{Decide, Turn};
use crate::sizing::{Choice, SameAgain, Sizing};

/// One size that is estimated and shown.
#[derive(Clone, Debug)]
pub struct ShownSize {
    /// Its place in the chart.
    pub size: usize,
    /// The size as a garment.
    pub outfit: Outfit,
    /// Its estimate on the limb.
    pub estimated: Estimated,
    /// What would decide its fall, the measurement to name first.
    pub decide: Vec<Decide>,
    /// At which exponents its grade would turn.
    pub turns: Vec<Turn>,
}

/// One chart on one limb.
#[derive(Clone, Debug)]
pub struct ChartAssessment {
    /// The chart.
    pub chart: Chart,
    /// Its label as printed: told apart by its file where another chart of the run bears the same.
    pub printed: String,
    /// Which part of a set.
    pub part: usize,
    /// Every size against the limb.
    pub sizing: Sizing,
    /// For each size, whether a certain rise takes it out.
    pub reversed: Vec<bool>,
    /// The choice.
    pub choice: Choice,
    /// The chance of the same size again.
    pub again: Option<SameAgain>,
    /// The sizes that are shown with their pressures, in chart order.
    pub shown: Vec<ShownSize>,
    /// The length variant of the chosen size, by its name.
    pub variant: Option<String>,
    /// What is known of the length, where no variant serves.
    pub length_note: Option<String>,
    /// Which outcomes hold.
    pub outcomes: ChartOutcomes,
    /// Whether it is the one of its part that counts.
    pub counted: bool,
}

impl ChartAssessment {
    /// The size that counts: chosen, or picked between two.
    pub fn size(&self) -> Option<usize> {
        self.choice.size
    }

    /// The label of a size.
    pub fn size_label(&self, size: usize) -> &str {
        self.chart.sizes.get(size).map_or("", |size| size.label.as_str())
    }

    /// The estimate of a size that is shown.
    pub fn shown(&self, size: usize) -> Option<&ShownSize> {
        self.shown.iter().find(|one| one.size == size)
    }

    /// The worst outcome that holds.
    pub fn outcome(&self) -> Outcome {
        self.outcomes.outcome()
    }
}
