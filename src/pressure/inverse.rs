//! Owns the inverse: the relaxed girth that gives a wanted pressure, and the two ways of saying a
//! reduction.

use super::law::tension_for;
use crate::garment::Fabric;
use crate::quantity::{newton_per_metre, pressure_from_mmhg};

/// A relaxed girth that gives a wanted pressure.
#[derive(Clone, Copy, Debug)]
pub struct Relaxed {
    /// Relaxed girth, cm.
    pub relaxed_cm: f64,
    /// Stretch there, a fraction of the relaxed girth.
    pub stretch: f64,
    /// Tension of all layers, N/m.
    pub newton_per_metre: f64,
}

/// Solves T(e) = P·C/2π for `layers` layers, C0 = C/(1 + e). None where the tension wanted lies beyond
/// the fabric's last tested point.
///
/// Source: derived; check value 20 mmHg, C 25 cm, T = 400 N/m · e: C0 19.7591523367 cm.
pub fn relaxed_for(fabric: &Fabric, layers: u32, girth_cm: f64, wanted_mmhg: f64) -> Option<Relaxed> {
    let tension = newton_per_metre(tension_for(pressure_from_mmhg(wanted_mmhg), girth_cm));
    let stretch = fabric.stretch_at(tension / f64::from(layers.max(1)))?;
    Some(Relaxed { relaxed_cm: girth_cm / (1.0 + stretch), stretch, newton_per_metre: tension })
}

/// Stretch of the garment, (C − C0)/C0, from the reduction of the limb's girth, (C − C0)/C, below 1.
///
/// Source: derived; 20 % of the limb is 25 % of the garment.
pub fn stretch_from_reduction(reduction: f64) -> f64 {
    reduction / (1.0 - reduction)
}

/// Reduction of the limb's girth, (C − C0)/C, from the garment's stretch, (C − C0)/C0 (derived).
pub fn reduction_from_stretch(stretch: f64) -> f64 {
    stretch / (1.0 + stretch)
}
