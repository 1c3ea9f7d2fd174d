//! Owns a change of weight that asks for measuring again.

use jiff::civil::Date;

/// A weight that has changed by the share of the rules, or more.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WeightChange {
    /// Weight then, kg.
    pub was_kg: f64,
    /// Weight now, kg.
    pub now_kg: f64,
    /// The day of the earlier weight.
    pub on: Date,
}

impl WeightChange {
    /// From `was` to `now`, where it reaches `percent`, with the slack that decimals need.
    pub(super) fn of(was_kg: f64, now_kg: f64, on: Date, percent: f64) -> Option<Self> {
        let reaches = 100.0 * (now_kg - was_kg).abs() >= percent * was_kg - 1e-9;
        reaches.then_some(Self { was_kg, now_kg, on })
    }
}
