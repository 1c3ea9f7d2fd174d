//! Owns the named sets that grade an excess of volume or girth.

use super::{Basis, Limbs};

/// What a set grades.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExcessMeasure {
    /// Excess volume in % of the other limb.
    Percent,
    /// Excess volume, mL.
    Millilitres,
    /// Largest difference of girth at one mark, cm.
    GirthDifference,
}

/// One grade of a set; ends as written.
#[derive(Clone, Debug)]
pub struct Grade {
    /// Its name.
    pub grade: String,
    /// Holds from this value on.
    pub at_least: Option<f64>,
    /// Holds above this value.
    pub above: Option<f64>,
    /// Holds up to this value.
    pub at_most: Option<f64>,
    /// Holds below this value.
    pub below: Option<f64>,
    /// What it rests on.
    pub basis: Basis,
}

impl Grade {
    /// Whether the grade holds for `value`, unrounded.
    pub fn holds(&self, value: f64) -> bool {
        self.at_least.is_none_or(|limit| value >= limit)
            && self.above.is_none_or(|limit| value > limit)
            && self.at_most.is_none_or(|limit| value <= limit)
            && self.below.is_none_or(|limit| value < limit)
    }
}

/// A named set of grades.
#[derive(Clone, Debug)]
pub struct SeveritySet {
    /// Its name.
    pub set: String,
    /// On which limbs it is shown.
    pub limbs: Limbs,
    /// What it grades.
    pub of: ExcessMeasure,
    /// Its grades, mildest first.
    pub grades: Vec<Grade>,
    /// Where it was read.
    pub source: String,
}

impl SeveritySet {
    /// The grade of `value`; sets that only say yes say no, others `none`, where no grade holds.
    pub fn grade(&self, value: f64) -> &str {
        let only_yes = matches!(self.grades.as_slice(), [one] if one.grade == "yes");
        let otherwise = if only_yes { "no" } else { "none" };
        self.grades.iter().find(|grade| grade.holds(value)).map_or(otherwise, |grade| &grade.grade)
    }
}
