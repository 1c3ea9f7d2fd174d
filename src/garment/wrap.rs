//! Owns a wrap or bandage that is put on with a known pull.

use crate::anatomy::{Landmark, Limb};
use crate::input::Text;

/// Relative SD of the pull of a wrap from mark to mark, unless stated. Basis: house rule (a third of
/// nurses' bandages out of range: Keller 2009, Int Wound J 6:324, published).
pub const WRAP_TENSION_SD: f64 = 0.2;

/// A wrap.
#[derive(Clone, Debug)]
pub struct Wrap {
    /// Its label.
    pub label: Text,
    /// The file it was read from.
    pub file: String,
    /// Arm or leg.
    pub limb: Limb,
    /// The pull on the strip, N.
    pub pull_n: f64,
    /// Relative SD of that pull, a fraction, independent at each mark.
    pub tension_sd: f64,
    /// Width of the strip, cm.
    pub width_cm: f64,
    /// Layers at one place; a part of a layer counts as such.
    pub layers: f64,
    /// The overlap that gave the layers, a fraction, if it was stated so.
    pub overlap: Option<f64>,
    /// Thickness of one layer, cm; none = taken as thin.
    pub thickness_cm: Option<f64>,
    /// Its materials; none = unknown.
    pub materials: Option<Vec<Text>>,
    /// Its distal end.
    pub from: Landmark,
    /// Its proximal end.
    pub to: Landmark,
}
