//! Owns the dimension-checked types of the physics and the constants that tie units together.

use uom::si::f64::{Pressure as SiPressure, SurfaceTension};
use uom::si::pressure::pascal;
use uom::si::surface_tension::newton_per_meter;

/// Pressure, SI.
pub type Pressure = SiPressure;
/// Tension of a fabric per unit worn width, SI.
pub type Tension = SurfaceTension;

/// Pascals in one millimetre of mercury. Basis: derived (conventional mmHg: 13 595.1 kg/m³ × 9.80665 m/s² × 1 mm).
pub const PASCAL_PER_MMHG: f64 = 133.322_387_415;

/// Standard gravity, m/s². Basis: derived (defined value).
pub const STANDARD_GRAVITY: f64 = 9.806_65;

/// A pressure of `value` mmHg.
pub fn pressure_from_mmhg(value: f64) -> Pressure {
    Pressure::new::<pascal>(value * PASCAL_PER_MMHG)
}

/// `pressure` in mmHg.
pub fn mmhg(pressure: Pressure) -> f64 {
    pressure.get::<pascal>() / PASCAL_PER_MMHG
}

/// A tension of `value` N/m.
pub fn tension_from_newton_per_metre(value: f64) -> Tension {
    Tension::new::<newton_per_meter>(value)
}

/// `tension` in N/m.
pub fn newton_per_metre(tension: Tension) -> f64 {
    tension.get::<newton_per_meter>()
}
