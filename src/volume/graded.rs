//! Owns the grade of an excess by one named set, and its place between two cut-offs of limbs.

use crate::anatomy::{Limb, Side};
use crate::record::Affected;

/// The grade by one set. No set is a verdict: they disagree, so all are shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Graded {
    /// The set's name.
    pub set: String,
    /// The grade's name.
    pub grade: String,
    /// Where the set was read.
    pub source: String,
}

/// Between which cut-offs an excess lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutOffGrade {
    /// Below the lower one.
    NoneOrMild,
    /// From the lower to the upper one.
    Moderate,
    /// Above the upper one.
    Severe,
}

impl CutOffGrade {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::NoneOrMild => "none-mild",
            Self::Moderate => "moderate",
            Self::Severe => "severe",
        }
    }
}

/// The two cut-offs that hold for a limb, and where the excess lies.
///
/// Source: Gjorup 2018, Lymphat Res Biol 16:75 (published): body scans of a melanoma cohort, hand and
/// foot apart, so another way of measuring than the tape.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CutOffs {
    /// Whether the limb is the dominant one; none for a leg, where it does not matter.
    pub dominant: Option<bool>,
    /// Lower cut-off, % of the other limb.
    pub lower_percent: f64,
    /// Upper cut-off, % of the other limb.
    pub upper_percent: f64,
    /// Where the excess lies, unrounded.
    pub grade: CutOffGrade,
}

/// Lower and upper cut-off, %. Basis: published (Gjorup 2018, Lymphat Res Biol 16:75).
const DOMINANT_ARM: (f64, f64) = (6.0, 10.0);
/// As [`DOMINANT_ARM`], for the arm that is not dominant.
const OTHER_ARM: (f64, f64) = (0.0, 4.0);
/// As [`DOMINANT_ARM`], for a leg.
const LEG: (f64, f64) = (3.0, 6.0);

impl CutOffs {
    /// Those of an excess of `percent`; none for an arm whose dominance is not recorded, or where both
    /// or neither are affected.
    pub fn of(limb: Limb, affected: Affected, dominance: Option<Side>, percent: f64) -> Option<Self> {
        let Affected::One(side) = affected else { return None };
        let dominant = match limb {
            Limb::Arm => Some(dominance? == side),
            Limb::Leg => None,
        };
        let (lower_percent, upper_percent) = match dominant {
            None => LEG,
            Some(true) => DOMINANT_ARM,
            Some(false) => OTHER_ARM,
        };
        let grade = if percent < lower_percent {
            CutOffGrade::NoneOrMild
        } else if percent <= upper_percent {
            CutOffGrade::Moderate
        } else {
            CutOffGrade::Severe
        };
        Some(Self { dominant, lower_percent, upper_percent, grade })
    }
}
