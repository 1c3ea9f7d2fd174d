//! Owns how often the grades of a rise are right and wrong, as measured by simulation.
//!
//! Source: the simulation in `tests/alarms.rs` with its fixed seeds; the test fails when the figures
//! here are no longer the ones it finds.

/// The rates at one stretch of the reference, in % of simulated measurements.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AlarmRates {
    /// Stretch at the reference, %.
    pub stretch_percent: u32,
    /// Basis `fabric`: a garment whose every judged step falls by 30 %, graded likely or certain.
    pub fabric_false_alarm: f64,
    /// Basis `fabric`: a garment that rises by 20 % and stays there, graded likely or certain.
    pub fabric_rise_found: f64,
    /// Basis `stretch`: the falling garment, graded none or possible
    /// with no pair left undecided.
    pub stretch_fall_decided: f64,
    /// Basis `stretch`: a flat or rising garment (the worse of the two), graded so.
    pub stretch_rise_missed: f64,
}

/// The measured rates: tape SD 0.35 cm, relaxed SD 0.3 cm, three marks 8 cm or more apart, linear knit.
pub const MEASURED_RATES: [AlarmRates; 3] = [
    AlarmRates {
        stretch_percent: 20,
        fabric_false_alarm: 3.0,
        fabric_rise_found: 97.4,
        stretch_fall_decided: 86.0,
        stretch_rise_missed: 1.2,
    },
    AlarmRates {
        stretch_percent: 35,
        fabric_false_alarm: 0.2,
        fabric_rise_found: 99.2,
        stretch_fall_decided: 95.4,
        stretch_rise_missed: 0.4,
    },
    AlarmRates {
        stretch_percent: 50,
        fabric_false_alarm: 0.1,
        fabric_rise_found: 99.7,
        stretch_fall_decided: 98.1,
        stretch_rise_missed: 0.2,
    },
];
