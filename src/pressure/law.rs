//! Owns the law itself.

use std::f64::consts::TAU;

use uom::si::f64::Length;
use uom::si::length::centimeter;

use crate::quantity::{Girth, Pressure, Tension};

/// Interface pressure of a tension over a girth: P = 2πT/C.
///
/// Source: derived; check value T 100 N/m, C 25 cm: 18.8511034913 mmHg.
pub fn laplace(tension: Tension, girth: Girth) -> Pressure {
    laplace_cm(tension, girth.cm())
}

/// The same over a girth in cm that is not on the tape's raster, above 0.
pub fn laplace_cm(tension: Tension, girth_cm: f64) -> Pressure {
    TAU * tension / Length::new::<centimeter>(girth_cm)
}

/// Tension that presses so much over a girth in cm, above 0: T = P·C/2π.
///
/// Source: derived; check value 20 mmHg over 25 cm: 106.09458491 N/m.
pub fn tension_for(pressure: Pressure, girth_cm: f64) -> Tension {
    (pressure * Length::new::<centimeter>(girth_cm) / TAU).into()
}

/// Layers that a wrap with an overlap (a share of its width, 0 to below 1) puts on every place:
/// n = 1 / (1 − overlap). None outside that range.
///
/// Source: derived; 50 % gives 2, two thirds give 3.
pub fn overlap_layers(overlap: f64) -> Option<f64> {
    (0.0..1.0).contains(&overlap).then(|| 1.0 / (1.0 - overlap))
}
