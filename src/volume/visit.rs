//! Owns one visit of one limb in its course.

use jiff::civil::Date;

use super::{ProtocolChange, VisitVolume};

/// One visit of one limb.
#[derive(Clone, Debug)]
pub struct Visit {
    /// The record's place in the list that was given.
    pub record: usize,
    /// The day.
    pub measured_on: Date,
    /// What its girths say.
    pub volume: VisitVolume,
    /// SD of its volume against other visits', mL; none without a volume.
    pub sd_between_ml: Option<f64>,
    /// Which series of like measurements it belongs to, from 0. Volumes of two series are never
    /// compared: a new series is a new baseline.
    pub series: usize,
    /// What was done otherwise than at the visit before it.
    pub changes: Vec<ProtocolChange>,
}
