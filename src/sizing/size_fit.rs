//! Owns one size against the limb.

use super::{LengthFit, Limits, MeasureFit, MeasureVerdict, SizingInput};
use crate::anatomy::Landmark;
use crate::garment::{Chart, Size};
use crate::quantity::Range;

/// Whether a size takes every girth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizeVerdict {
    /// It takes every girth.
    Inside,
    /// At least one girth is outside, whatever is missing.
    Outside,
    /// Only missing girths stand between it and inside.
    Open,
}

impl SizeVerdict {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Inside => "inside",
            Self::Outside => "outside",
            Self::Open => "open",
        }
    }
}

/// One size against the limb.
#[derive(Clone, Debug, PartialEq)]
pub struct SizeFit {
    /// Inside, outside or open.
    pub verdict: SizeVerdict,
    /// The girths, distal to proximal.
    pub measures: Vec<MeasureFit>,
    /// The length variant.
    pub length: LengthFit,
    /// Chance that every true girth lies in its range, by tape error alone; none while one is missing.
    pub inside_chance: Option<f64>,
}

impl SizeFit {
    /// Holds a limb against a size.
    pub(super) fn of(input: &SizingInput, chart: &Chart, size: &Size, limits: Limits) -> Self {
        let fit = |(landmark, range): &(Landmark, Range)| {
            MeasureFit::of(*landmark, input.girths.get(landmark), *range, chart.printed_step, limits)
        };
        let measures: Vec<MeasureFit> = size.girths.iter().map(fit).collect();
        let verdict = if measures.iter().any(|one| one.verdict == MeasureVerdict::Outside) {
            SizeVerdict::Outside
        } else if measures.iter().any(|one| one.verdict == MeasureVerdict::Missing) {
            SizeVerdict::Open
        } else {
            SizeVerdict::Inside
        };
        let inside_chance = measures.iter().map(|one| one.inside_chance).product::<Option<f64>>();
        let length = LengthFit::of(input, size, chart.printed_step);
        Self { verdict, measures, length, inside_chance }
    }

    /// By how much the known girths miss the ranges: worst, then sum, tenths of a millimetre.
    pub fn misses(&self) -> (i64, i64) {
        let misses = || self.measures.iter().map(MeasureFit::miss);
        (misses().max().unwrap_or_default(), misses().sum())
    }

    /// The girth that misses worst; the most distal of several.
    pub fn worst(&self) -> Option<&MeasureFit> {
        self.measures.iter().filter(|one| one.verdict == MeasureVerdict::Outside).min_by_key(|one| one.margin)
    }
}
