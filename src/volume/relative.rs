//! Owns the relative volume change since a visit before treatment.
//!
//! Source: (A2·U1)/(U2·A1) − 1, U the other side (published: Ancukiewicz 2011, IJROBP 79:1436).

/// Relative volume change from which early care is discussed, %. Basis: memory (high).
pub const EARLY_PERCENT: f64 = 3.0;

/// The stricter one, %. Basis: published (see volume grades).
pub const EARLY_PUBLISHED_PERCENT: f64 = 5.0;

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
    /// Whether it reaches an early trigger; see [`EARLY_PERCENT`].
    pub fn reaches(self, trigger_percent: f64) -> bool {
        self.percent >= trigger_percent
    }
}
