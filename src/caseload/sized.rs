//! Owns what sizing says of one case, however it was worked out.

use crate::sizing::ChartVerdict;

/// A case against one chart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sized {
    /// What is said of the chart.
    pub verdict: ChartVerdict,
    /// The size picked, by its place.
    pub size: Option<usize>,
    /// The nearest size where none takes the limb.
    pub nearest: Option<usize>,
    /// The two sizes that it lies between, or the first two that take it alike.
    pub between: Option<(usize, usize)>,
    /// The least margin of the size picked, else of the nearest, tenths of a millimetre, and the number of its
    /// measure.
    pub margin: Option<(i64, usize)>,
    /// Chance that every true girth lies in the ranges of that size.
    pub inside_chance: Option<f64>,
}

impl Sized {
    /// The size whose figures are given: picked, else nearest.
    pub fn shown(&self) -> Option<usize> {
        self.size.or(self.nearest)
    }
}
