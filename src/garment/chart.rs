//! Owns a size chart. A chart's size is a garment.

use super::{Fabric, Garment, Scheme, Size};
use crate::anatomy::{Landmark, Limb};
use crate::input::Text;
use crate::quantity::Step;
use crate::record::LengthName;

/// What a chart's author wants done between two sizes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum BetweenSizes {
    /// Pick the smaller.
    Smaller,
    /// Pick the larger.
    Larger,
    /// Pick none; a fitter decides.
    #[default]
    Fitter,
}

impl BetweenSizes {
    /// The words that files use.
    pub const WORDS: [(&'static str, Self); 3] =
        [("smaller", Self::Smaller), ("larger", Self::Larger), ("fitter", Self::Fitter)];
}

/// A class claimed under a scheme.
#[derive(Clone, Debug)]
pub struct Claim {
    /// The scheme.
    pub scheme: Scheme,
    /// The class in it; one of the scheme's.
    pub class: String,
}

/// A size chart, checked.
#[derive(Clone, Debug)]
pub struct Chart {
    /// Its label.
    pub label: Text,
    /// The file it was read from; with the label, its identity within a run.
    pub file: String,
    /// Arm or leg.
    pub limb: Limb,
    /// Its style, as `sleeve`.
    pub style: Option<Text>,
    /// The garment's distal end; the most distal girth where the file names none.
    pub from: Landmark,
    /// The garment's proximal end; the most proximal girth where the file names none.
    pub to: Landmark,
    /// The class claimed.
    pub claim: Option<Claim>,
    /// Its materials; none = unknown.
    pub materials: Option<Vec<Text>>,
    /// Whether it has a hand part; none = not stated.
    pub hand_part: Option<bool>,
    /// Its fabric.
    pub fabric: Option<Fabric>,
    /// Layers of that fabric.
    pub layers: u32,
    /// What to do between two sizes.
    pub between_sizes: BetweenSizes,
    /// Girths are rounded to this step before they are compared; none = not rounded.
    pub printed_step: Option<Step>,
    /// Sizes, small to large where the file has an order; all state the same girths.
    pub sizes: Vec<Size>,
    /// Whether the file lists them large to small.
    pub turned: bool,
    /// The sizes whose relaxed girths were measured on the garment itself.
    pub measured: Vec<MeasuredSize>,
}

impl Chart {
    /// The landmarks that every size states, distal to proximal.
    pub fn measures(&self) -> Vec<Landmark> {
        self.sizes
            .first()
            .map(|size| size.girths.iter().map(|(landmark, _)| *landmark).collect())
            .unwrap_or_default()
    }

    /// The lengths that any size states.
    pub fn lengths(&self) -> Vec<LengthName> {
        let mut all: Vec<LengthName> = self
            .sizes
            .iter()
            .flat_map(|size| &size.variants)
            .flat_map(|variant| variant.lengths.iter().map(|(name, _)| *name))
            .collect();
        all.sort();
        all.dedup();
        all
    }

    /// Whether any size states relaxed girths.
    pub fn has_relaxed(&self) -> bool {
        self.sizes.iter().any(|size| !size.relaxed.is_empty())
    }

    /// A size by its label.
    pub fn size_of(&self, label: &str) -> Option<usize> {
        self.sizes.iter().position(|size| size.label.as_str() == label)
    }

    /// The garment that a size is, by its place; none where there is no such size. A size without relaxed
    /// girths is a garment of which nothing can be estimated.
    pub fn garment(&self, size: usize) -> Option<Garment> {
        let size = self.sizes.get(size)?;
        let label = Text::new(&format!("{}, size {}", self.label, size.label));
        Some(Garment {
            label: label.unwrap_or_else(|_| self.label.clone()),
            file: self.file.clone(),
            limb: self.limb,
            style: self.style.clone(),
            from: self.from,
            to: self.to,
            claim: self.claim.clone(),
            materials: self.materials.clone(),
            hand_part: self.hand_part,
            fabric: self.fabric.clone(),
            fabric_at: Vec::new(),
            layers: self.layers,
            relaxed: size.relaxed.clone(),
            top_edge: None,
        })
    }
}

/// A size that was measured on the table.
#[derive(Clone, Debug)]
pub struct MeasuredSize {
    /// Its place in the chart.
    pub size: usize,
    /// The garment file.
    pub file: String,
}

/// The labels of a run's charts as they are printed: a label that two charts bear is told apart by the file.
pub fn printed_labels(charts: &[&Chart]) -> Vec<String> {
    let shared = |label: &Text| charts.iter().filter(|other| other.label == *label).count() > 1;
    charts
        .iter()
        .map(|chart| {
            if shared(&chart.label) {
                format!("{} [{}]", chart.label, chart.file)
            } else {
                chart.label.to_string()
            }
        })
        .collect()
}
