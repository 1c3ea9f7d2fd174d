//! Owns a size chart.

use super::{Fabric, Scheme, Size};
use crate::anatomy::{Between, Landmark, Limb};
use crate::quantity::Step;

/// What a chart's author wants done between two sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BetweenSizes {
    /// Pick the smaller.
    Smaller,
    /// Pick the larger.
    Larger,
    /// Pick none; a fitter decides.
    Refer,
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
    pub label: String,
    /// Arm or leg.
    pub limb: Limb,
    /// Its style, as `sleeve`.
    pub style: Option<String>,
    /// The garment's distal end.
    pub from: Option<Landmark>,
    /// The garment's proximal end.
    pub to: Landmark,
    /// The class claimed.
    pub claim: Option<Claim>,
    /// Its materials; none = unknown.
    pub contains: Option<Vec<String>>,
    /// Whether it has a hand part; none = not stated.
    pub hand_part: Option<bool>,
    /// Its fabric.
    pub fabric: Option<Fabric>,
    /// Layers of that fabric.
    pub layers: u32,
    /// What to do between two sizes.
    pub between_sizes: BetweenSizes,
    /// Readings are rounded to this step before they are compared; none = not rounded.
    pub printed_step: Option<Step>,
    /// Sizes, small to large; all state the same girths.
    pub sizes: Vec<Size>,
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
    pub fn lengths(&self) -> Vec<Between> {
        let mut all: Vec<Between> = self
            .sizes
            .iter()
            .flat_map(|size| &size.variants)
            .flat_map(|variant| variant.lengths.iter().map(|(between, _)| *between))
            .collect();
        all.sort();
        all.dedup();
        all
    }

    /// Whether any size states relaxed girths.
    pub fn has_relaxed(&self) -> bool {
        self.sizes.iter().any(|size| !size.relaxed.is_empty())
    }
}
