//! Owns sensor readings under a garment.

use crate::anatomy::Landmark;
use crate::input::Spot;
use crate::quantity::Pressure;

/// One pressure read by a sensor under a garment.
#[derive(Clone, Debug)]
pub struct Reading {
    /// Where.
    pub landmark: Landmark,
    /// How much.
    pub pressure: Pressure,
    /// Its standard deviation, if stated.
    pub sd: Option<Pressure>,
    /// The posture it was taken in.
    pub posture: Option<String>,
    /// Minutes worn before.
    pub minutes_worn: Option<f64>,
    /// Which garment.
    pub garment: Option<String>,
    /// Place in the file.
    pub spot: Spot,
}
