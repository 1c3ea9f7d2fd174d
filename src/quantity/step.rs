//! Owns the step that a chart's figures are printed in, and the rounding to it.

use super::decimal::nearest;
use super::{Girth, Span, Written};

/// A printed step of a length, exact: a quarter of an inch is 6.35 mm, not 6.4.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    /// Tenths of a millimetre times `scale`.
    parts: i128,
    /// A power of ten.
    scale: i128,
}

impl Step {
    /// The step as written; none where it is not above 0 and at most `most` tenths of a millimetre.
    pub fn of(written: Written, most: i64) -> Option<Self> {
        let (parts, scale) = written.exact_tenth_millimetres()?;
        (parts > 0 && parts <= i128::from(most).checked_mul(scale)?).then_some(Self { parts, scale })
    }

    /// The step in whole tenths of a millimetre; none where it is no whole number of them.
    pub fn whole_tenths(self) -> Option<i64> {
        if self.parts % self.scale == 0 { i64::try_from(self.parts / self.scale).ok() } else { None }
    }

    /// The step, tenths of a millimetre.
    #[expect(clippy::cast_precision_loss, reason = "a step is far below 2^53 of its parts")]
    fn size(self) -> f64 {
        self.parts as f64 / self.scale as f64
    }

    /// A drawn length, tenths of a millimetre: stored to the nearest tenth, then to the nearest step, at least one
    /// step. The same as the rounding of a [`Girth`] but for the last bit of a step that is no whole tenth.
    pub fn near(self, tenths: f64) -> f64 {
        let size = self.size();
        ((tenths.round() / size).round().max(1.0) * size).round()
    }

    /// The least whole tenth of a millimetre that is rounded to `end` or above; all below are rounded below it.
    pub fn first_up_to(self, end: i64) -> i64 {
        let reach = self.whole_tenths().map_or_else(|| i64::from(i32::MAX), |step| step.saturating_add(2));
        let (mut low, mut high) = (end.saturating_sub(reach), end.saturating_add(reach));
        while low < high {
            let middle = low + (high - low) / 2;
            if self.round(middle).is_some_and(|rounded| rounded >= end) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        low
    }

    /// `tenths` tenths of a millimetre to the nearest step, ties away from zero, at least one step, then
    /// stored to the nearest tenth like every length.
    fn round(self, tenths: i64) -> Option<i64> {
        let steps = nearest(i128::from(tenths).checked_mul(self.scale)?, self.parts).max(1);
        i64::try_from(nearest(steps.checked_mul(self.parts)?, self.scale)).ok()
    }
}

impl Girth {
    /// Rounded to a chart's printed step; unrounded for a step of none.
    #[must_use]
    pub fn rounded_to(self, step: Option<Step>) -> Self {
        step.and_then(|step| Self::from_tenths(step.round(self.tenths())?)).unwrap_or(self)
    }
}

impl Span {
    /// Rounded to a chart's printed step; unrounded for a step of none.
    #[must_use]
    pub fn rounded_to(self, step: Option<Step>) -> Self {
        step.and_then(|step| Self::from_tenths(step.round(self.tenths())?)).unwrap_or(self)
    }
}
