//! Owns a garment that was given to the client.

use jiff::civil::Date;

use crate::input::Text;

/// A garment in use.
#[derive(Clone, Debug)]
pub struct GarmentInUse {
    /// Its label, as its chart's.
    pub label: Text,
    /// Its size.
    pub size: Option<Text>,
    /// When it was given.
    pub given_on: Date,
    /// How many of it.
    pub quantity: u32,
    /// Hours worn a day.
    pub hours_a_day: Option<f64>,
}
