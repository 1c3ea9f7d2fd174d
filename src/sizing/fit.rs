//! Owns the figures of one limb against one chart.

use crate::anatomy::{Between, Landmark};
use crate::quantity::{Girth, Range, Span};

/// How a girth lies in a range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasureVerdict {
    /// Inside, with room.
    Inside,
    /// Inside, close to an end.
    Edge,
    /// Outside.
    Outside,
    /// Not measured.
    NotJudged,
}

impl MeasureVerdict {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Inside => "inside",
            Self::Edge => "edge",
            Self::Outside => "outside",
            Self::NotJudged => "not-judged",
        }
    }
}

/// What the garment would be on a girth outside its range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// The limb is thicker than the range.
    Tight,
    /// The limb is thinner than the range.
    Loose,
}

impl Direction {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Tight => "tight",
            Self::Loose => "loose",
        }
    }
}

/// One girth against one range.
#[derive(Clone, Copy, Debug)]
pub struct MeasureFit {
    /// Where.
    pub landmark: Landmark,
    /// The girth, rounded to the chart's step; none = not measured.
    pub girth: Option<Girth>,
    /// The range.
    pub range: Range,
    /// Room to the nearer end, tenths of a millimetre, negative outside.
    pub margin: Option<i64>,
    /// Inside, edge, outside.
    pub verdict: MeasureVerdict,
    /// Tight or loose, outside only.
    pub direction: Option<Direction>,
}

/// One length against one variant.
#[derive(Clone, Debug)]
pub struct LengthFit {
    /// Which length.
    pub between: Between,
    /// The length, rounded to the chart's step.
    pub length: Option<Span>,
    /// The ranges of all variants, with the variant's name.
    pub ranges: Vec<(Option<String>, Range)>,
}

/// Whether a size holds every girth and a variant every length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizeVerdict {
    /// Every girth and length inside.
    Inside,
    /// At least one outside.
    Outside,
    /// A girth or length is missing.
    NotJudged,
}

impl SizeVerdict {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Inside => "inside",
            Self::Outside => "outside",
            Self::NotJudged => "not-judged",
        }
    }
}

/// One size against the limb.
#[derive(Clone, Debug)]
pub struct SizeFit {
    /// Its label.
    pub label: String,
    /// Inside, outside, not judged.
    pub verdict: SizeVerdict,
    /// The girths, distal to proximal.
    pub measures: Vec<MeasureFit>,
    /// The lengths.
    pub lengths: Vec<LengthFit>,
    /// The first variant that holds every length; none where no variant does or the chart names none.
    pub variant: Option<String>,
    /// Whether a variant holds every length (true for a size without lengths).
    pub length_holds: bool,
    /// Chance that the true girths lie in the ranges, by tape error alone.
    pub inside_probability: Option<f64>,
}

impl SizeFit {
    /// By how much the girths miss the ranges: worst, then sum, tenths of a millimetre.
    pub fn misses(&self) -> (i64, i64) {
        let misses = || self.measures.iter().map(|one| one.margin.map_or(0, |margin| (-margin).max(0)));
        (misses().max().unwrap_or_default(), misses().sum())
    }

    /// The girth that misses worst.
    pub fn worst(&self) -> Option<&MeasureFit> {
        self.measures.iter().filter(|one| one.verdict == MeasureVerdict::Outside).min_by_key(|one| one.margin)
    }

    /// The least room, tenths of a millimetre.
    pub fn least_room(&self) -> Option<&MeasureFit> {
        self.measures.iter().filter(|one| one.margin.is_some()).min_by_key(|one| one.margin)
    }
}

/// Every size of a chart against the limb.
#[derive(Clone, Debug)]
pub struct Sizing {
    /// The sizes, in the order of the chart.
    pub sizes: Vec<SizeFit>,
    /// For each measure, the sizes that hold it alone.
    pub wanted: Vec<(Landmark, Vec<String>)>,
    /// Girths and lengths that the chart asks for and the record lacks, in words.
    pub missing: Vec<String>,
}
