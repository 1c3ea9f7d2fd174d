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
    /// Basis `stretch`: the falling garment, graded none or possible.
    pub stretch_fall_decided: f64,
    /// Basis `stretch`: a flat or rising garment, graded none or possible.
    pub stretch_rise_missed: f64,
}

/// The measured rates: tape SD 0.35 cm, relaxed SD 0.3 cm, three marks 8 cm or more apart, linear knit.
pub const MEASURED_RATES: [AlarmRates; 3] = [
    AlarmRates {
        stretch_percent: 20,
        fabric_false_alarm: 0.0,
        fabric_rise_found: 0.0,
        stretch_fall_decided: 0.0,
        stretch_rise_missed: 0.0,
    },
    AlarmRates {
        stretch_percent: 35,
        fabric_false_alarm: 0.0,
        fabric_rise_found: 0.0,
        stretch_fall_decided: 0.0,
        stretch_rise_missed: 0.0,
    },
    AlarmRates {
        stretch_percent: 50,
        fabric_false_alarm: 0.0,
        fabric_rise_found: 0.0,
        stretch_fall_decided: 0.0,
        stretch_rise_missed: 0.0,
    },
];
