//! Owns under what a fall is judged.

use super::{FallRules, GradientBasis, Knit};
use crate::anatomy::{Landmark, Limb};

/// From which to which exponent the tension may rise with stretch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// The lowest.
    pub low: f64,
    /// The highest.
    pub high: f64,
}

impl Band {
    /// Without a test of the knit. House rule: 0.7 to 1.5.
    pub const UNTESTED: Self = Self { low: 0.7, high: 1.5 };

    /// Around one exponent.
    pub fn around(exponent: f64, half: f64) -> Self {
        Self { low: exponent - half, high: exponent + half }
    }

    /// How wide it is.
    pub fn width(self) -> f64 {
        self.high - self.low
    }
}

/// Under what a fall is judged.
#[derive(Clone, Debug)]
pub struct FallSetting<'a> {
    /// Arm or leg.
    pub limb: Limb,
    /// The most proximal landmark that must be there for the whole to be judged.
    pub to: Landmark,
    /// What the judgement rests on.
    pub basis: GradientBasis,
    /// The knits, by number.
    pub knits: Vec<Knit<'a>>,
    /// Exponents of the tension, for [`GradientBasis::Stretch`] and beyond a curve's end.
    pub band: Band,
    /// Whether several pieces are worn together.
    pub together: bool,
    /// The numbers of the rule.
    pub rules: FallRules,
}

impl FallSetting<'_> {
    /// The same, by stretch alone.
    pub(super) fn by_stretch(&self) -> Self {
        Self { basis: GradientBasis::Stretch, ..self.clone() }
    }

    /// ln(1 + a rise that counts).
    pub(super) fn delta(&self) -> f64 {
        self.rules.rise.ln_1p()
    }
}
