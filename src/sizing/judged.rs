//! Owns every size of a chart against the limb.

use super::{Limits, MeasureVerdict, SizeFit, SizeVerdict, SizingInput};
use crate::anatomy::Landmark;
use crate::garment::Chart;

/// The sizes that a measure asks for alone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wanted {
    /// The measure.
    pub landmark: Landmark,
    /// Places of the sizes that take it.
    pub sizes: Vec<usize>,
}

/// Every size of a chart against the limb.
#[derive(Clone, Debug, PartialEq)]
pub struct Sizing {
    /// The sizes, in the order of the chart.
    pub sizes: Vec<SizeFit>,
    /// For each measure, the sizes that take it alone.
    pub wanted: Vec<Wanted>,
    /// Girths that the chart asks for and that are not known.
    pub missing: Vec<Landmark>,
}

impl Sizing {
    /// The nearest size by the known girths: least worst miss, then least sum, then the chart's order; none where no
    /// girth that the chart asks for is known, and nothing is near.
    pub fn nearest(&self) -> Option<usize> {
        let known = |size: &&SizeFit| size.measures.iter().any(|one| one.girth.is_some());
        let all = self.sizes.iter().enumerate().filter(|(_, size)| known(size));
        all.min_by_key(|(place, size)| (size.misses(), *place)).map(|(place, _)| place)
    }

    /// The least margin of a size, tenths of a millimetre, negative outside, and the place of its measure; the
    /// most distal of several.
    pub fn least_margin(&self, size: usize) -> Option<(i64, usize)> {
        let all = self.sizes.get(size)?.measures.iter().enumerate();
        all.filter_map(|(place, one)| Some((one.margin?, place))).min()
    }

    /// The places of the sizes with a verdict.
    pub fn places(&self, verdict: SizeVerdict) -> Vec<usize> {
        let all = self.sizes.iter().enumerate();
        all.filter(|(_, size)| size.verdict == verdict).map(|(place, _)| place).collect()
    }
}

/// Holds every size of `chart` against a limb.
pub fn judge(input: &SizingInput, chart: &Chart, limits: Limits) -> Sizing {
    let sizes: Vec<SizeFit> =
        chart.sizes.iter().map(|size| SizeFit::of(input, chart, size, limits)).collect();
    let measures = chart.measures();
    let wanted = measures
        .iter()
        .enumerate()
        .map(|(at, landmark)| {
            let takes = |size: &SizeFit| size.measures.get(at).is_some_and(|one| one.verdict.takes());
            let all = sizes.iter().enumerate();
            let sizes = all.filter(|(_, size)| takes(size)).map(|(place, _)| place).collect();
            Wanted { landmark: *landmark, sizes }
        })
        .collect();
    let missing = sizes.first().map_or_else(Vec::new, |size| {
        let missing = size.measures.iter().filter(|one| one.verdict == MeasureVerdict::Missing);
        missing.map(|one| one.landmark).collect()
    });
    Sizing { sizes, wanted, missing }
}
