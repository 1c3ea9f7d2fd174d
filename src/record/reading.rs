//! Owns sensor readings under a garment.

use crate::anatomy::Landmark;
use crate::input::{Named, Spot, Text};
use crate::quantity::Pressure;

/// Where around the limb a sensor lay.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SensorSide {
    /// In the hollow beside the ankle bone (inner or outer).
    AnkleHollow,
    /// Anywhere else that is named.
    Elsewhere,
}

/// One pressure read by a sensor under a garment.
#[derive(Clone, Debug)]
pub struct Reading {
    /// Where.
    pub landmark: Landmark,
    /// How much.
    pub pressure: Pressure,
    /// Its standard deviation, if stated.
    pub sd: Option<Pressure>,
    /// Where around the limb; none = not stated.
    pub sensor_side: Option<SensorSide>,
    /// The side as written.
    pub sensor_side_text: Option<Text>,
    /// The posture it was taken in.
    pub posture: Option<Text>,
    /// Minutes worn before.
    pub minutes_worn: Option<f64>,
    /// Which garment, `LABEL, size S`, with its place.
    pub garment: Option<Named>,
    /// Place in the file.
    pub spot: Spot,
}
