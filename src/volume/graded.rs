//! Owns the grade of an excess by one named set, and its place between two cut-offs of limbs.

use crate::anatomy::{Limb, Side};
use crate::record::Affected;
use crate::rules::Rules;

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
    /// From the upper one on.
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
#[derive(Clone, Debug, PartialEq)]
pub struct CutOffs {
    /// Whether the limb is the dominant one; none for a leg, where it does not matter.
    pub dominant: Option<bool>,
    /// Lower cut-off, % of the other limb.
    pub lower_percent: f64,
    /// Upper cut-off, % of the other limb.
    pub upper_percent: f64,
    /// Where the excess lies, unrounded.
    pub grade: CutOffGrade,
    /// Where the cut-offs were read.
    pub source: String,
}

impl CutOffs {
    /// Those of an excess of `percent`; none for an arm whose dominance is not recorded, or where both
    /// or neither are affected.
    pub fn of(
        limb: Limb,
        affected: Affected,
        dominance: Option<Side>,
        percent: f64,
        rules: &Rules,
    ) -> Option<Self> {
        let Affected::One(side) = affected else { return None };
        let dominant = dominance.map(|one| one == side);
        let row = rules
            .cutoffs
            .iter()
            .filter(|row| row.limb == limb)
            .find(|row| row.dominant.is_none() || row.dominant == dominant)?;
        let (lower_percent, upper_percent) = (100.0 * row.moderate, 100.0 * row.severe);
        let grade = if percent < lower_percent {
            CutOffGrade::NoneOrMild
        } else if percent < upper_percent {
            CutOffGrade::Moderate
        } else {
            CutOffGrade::Severe
        };
        let (dominant, source) = (row.dominant, row.source.clone());
        Some(Self { dominant, lower_percent, upper_percent, grade, source })
    }
}
