//! Owns how often the readiness rule is right, as simulated; data for `explain`.
//!
//! Source: derived, 20,000 simulated courses with visits on days 0, 3, 7, 10, 14, 17, 21, 24, 28 and
//! independent errors of one SD; reproduced by the tests with fixed seeds, within 1 point.

/// What the simulated limb does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Simulated {
    /// It does not change.
    Unchanged,
    /// It loses this much of its volume a week, %.
    Losing(f64),
    /// An excess of this much, %, decays with this time constant, days.
    Decaying(f64, f64),
}

/// Share of simulated courses whose bounds say settled: loss or gain below the limit for certain. A
/// limb that grows for certain is called rising all the same, however slowly: by the meaning of a
/// one-sided 95 % that befalls [`FALSE_RISING_PERCENT`] of unchanged limbs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReadinessRate {
    /// What the limb does.
    pub limb: Simulated,
    /// SD of one visit, %.
    pub sd_percent: f64,
    /// The day.
    pub day: u32,
    /// Share whose bounds say settled, %.
    pub settled_percent: f64,
}

/// Share of unchanged limbs called rising, %. Basis: derived (one-sided 95 %).
pub const FALSE_RISING_PERCENT: f64 = 5.0;

/// Days of the simulated visits.
pub const SIMULATED_DAYS: [u32; 9] = [0, 3, 7, 10, 14, 17, 21, 24, 28];

const fn rate(limb: Simulated, sd_percent: f64, day: u32, settled_percent: f64) -> ReadinessRate {
    ReadinessRate { limb, sd_percent, day, settled_percent }
}

const DECAYING: Simulated = Simulated::Decaying(23.0, 5.0);

/// The simulated rates.
pub const READINESS_RATES: [ReadinessRate; 16] = [
    rate(Simulated::Unchanged, 0.8, 7, 10.0),
    rate(Simulated::Unchanged, 0.8, 10, 72.0),
    rate(Simulated::Unchanged, 0.8, 14, 98.0),
    rate(Simulated::Losing(2.0), 0.8, 7, 2.0),
    rate(Simulated::Losing(2.0), 0.8, 10, 5.0),
    rate(Simulated::Losing(2.0), 0.8, 14, 5.0),
    rate(Simulated::Losing(3.0), 0.8, 7, 0.0),
    rate(Simulated::Losing(3.0), 0.8, 10, 0.0),
    rate(Simulated::Losing(3.0), 0.8, 14, 0.0),
    rate(DECAYING, 0.8, 17, 0.0),
    rate(DECAYING, 0.8, 21, 0.0),
    rate(DECAYING, 0.8, 24, 34.0),
    rate(DECAYING, 0.8, 28, 86.0),
    rate(Simulated::Unchanged, 1.2, 7, 0.0),
    rate(Simulated::Unchanged, 1.2, 10, 14.0),
    rate(Simulated::Unchanged, 1.2, 14, 68.0),
];
