//! Owns one visit of one limb in its course.

use jiff::civil::Date;

use super::{Excess, LimbVolume, ProtocolChange, VisitVolume};

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
    /// The volumes by the marks that every visit of its series shares: what may stand beside one another.
    pub compared: Option<Compared>,
    /// Which series of like measurements it belongs to, from 0. Volumes of two series are never
    /// compared: a new series is a new baseline.
    pub series: usize,
    /// What was done otherwise than at the visit before it.
    pub changes: Vec<ProtocolChange>,
}

/// A visit's volumes by the marks that its series shares.
#[derive(Clone, Copy, Debug)]
pub struct Compared {
    /// How many marks those are.
    pub marks: usize,
    /// Whether the visit has further marks.
    pub has_further: bool,
    /// The limb.
    pub measured: LimbVolume,
    /// The other limb.
    pub other: Option<LimbVolume>,
    /// What the affected limb has more.
    pub excess: Option<Excess>,
    /// SD of the limb against other visits, mL.
    pub sd_between_ml: f64,
}
