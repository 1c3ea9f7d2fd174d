//! Owns the change of one limb between two visits of one series.

use super::Excess;

/// Since which visit a change is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Since {
    /// The first of the series.
    First,
    /// The last before the newest.
    Last,
    /// The one at which the garment in use was fitted.
    Given,
}

/// The change of a limb, or of a part of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VolumeChange {
    /// Volume then, mL.
    pub was_ml: f64,
    /// Volume now, mL.
    pub now_ml: f64,
    /// 100·(V2 − V1)/V1, %.
    pub percent: f64,
    /// What measuring alone may give, %: 1.96·√(SD1² + SD2²), which is 1.96·√2·SD for two alike.
    pub detectable_percent: f64,
}

impl VolumeChange {
    /// Whether it is more than measuring.
    pub fn beyond(self) -> bool {
        self.percent.abs() > self.detectable_percent
    }
}

/// The change of the excess, where the other limb was measured at both visits by the same marks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExcessChange {
    /// The excess then.
    pub was: Excess,
    /// The excess now.
    pub now: Excess,
    /// Change, mL.
    pub ml: f64,
    /// What measuring alone may give, mL: the limb's own detectable change.
    pub detectable_ml: f64,
    /// Reduction of the excess, 100·(E1 − E2)/E1, %; none where there was no excess. Negative: grown.
    pub reduction_percent: Option<f64>,
    /// Whether every girth of the other limb is the same at both visits, so that it was perhaps copied.
    pub other_identical: bool,
}

impl ExcessChange {
    /// Whether it is more than measuring.
    pub fn beyond(self) -> bool {
        self.ml.abs() > self.detectable_ml
    }
}

/// Why the excess is not compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoExcess {
    /// Both sides, or neither, are affected.
    NotOneSided,
    /// The other limb was not measured then.
    NotThen,
    /// The other limb was not measured now.
    NotNow,
    /// The other limb's marks stood at other places.
    OtherMarks,
}

/// The change of one limb between two visits.
#[derive(Clone, Copy, Debug)]
pub struct Change {
    /// Since which visit.
    pub since: Since,
    /// The earlier visit, by its place in the limb's visits.
    pub from: usize,
    /// The later visit.
    pub to: usize,
    /// Whether only the marks that both visits share are compared.
    pub on_shared_marks: bool,
    /// How many marks are compared.
    pub marks: usize,
    /// Of the limb.
    pub volume: VolumeChange,
    /// Of the part below the joint, where both visits have a mark there.
    pub distal: Option<VolumeChange>,
    /// Of the excess.
    pub excess: Option<ExcessChange>,
    /// Why there is none.
    pub no_excess: Option<NoExcess>,
    /// (V2·W1)/(W2·V1) − 1, %: arms that are both affected, with a weight at both visits. Basis: memory
    /// (medium), of arms after surgery on both sides.
    pub weight_adjusted_percent: Option<f64>,
}

impl Change {
    /// Whether what is judged (the excess of one-sided swelling, else the limb) changed by more than
    /// measuring.
    pub fn beyond(&self) -> bool {
        self.excess.map_or_else(|| self.volume.beyond(), ExcessChange::beyond)
    }
}
