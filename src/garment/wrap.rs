//! Owns a wrap or bandage that is put on with a known pull.

use crate::anatomy::{Landmark, Limb};

/// A wrap.
#[derive(Clone, Debug)]
pub struct Wrap {
    /// Its label.
    pub label: String,
    /// Arm or leg.
    pub limb: Limb,
    /// The pull on the strip, N.
    pub pull_n: f64,
    /// Relative SD of that pull, a fraction; none = the rules' number for fabric tension.
    pub pull_sd: Option<f64>,
    /// Width of the strip, cm.
    pub width_cm: f64,
    /// Layers at one place; a part of a layer counts as such.
    pub layers: f64,
    /// The overlap that gave the layers, a fraction, if it was stated so.
    pub overlap: Option<f64>,
    /// Thickness of one layer, cm; none = taken as thin.
    pub thickness_cm: Option<f64>,
    /// Its materials; none = unknown.
    pub contains: Option<Vec<String>>,
    /// Its distal end.
    pub from: Landmark,
    /// Its proximal end.
    pub to: Landmark,
}
