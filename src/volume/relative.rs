//! Owns the relative volume change since a visit before treatment.
//!
//! Source: (A2·U1)/(U2·A1) − 1, U the other side (published: Ancukiewicz 2011, IJROBP 79:1436).

/// The relative volume change since the baseline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RelativeChange {
    /// The baseline, by its place in the limb's visits.
    pub from: usize,
    /// The newest visit.
    pub to: usize,
    /// %.
    pub percent: f64,
}

impl RelativeChange {
    /// Whether it reaches an early trigger of the rules.
    pub fn reaches(self, trigger_percent: f64) -> bool {
        self.percent >= trigger_percent
    }
}
