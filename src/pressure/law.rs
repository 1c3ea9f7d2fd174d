//! Owns the law itself.

use std::f64::consts::TAU;

use crate::quantity::{Girth, Pressure, Tension, girth_length};

/// Interface pressure of a tension over a girth: P = 2πT/C.
///
/// Source: derived; check value T 100 N/m, C 25 cm: 18.8511034913 mmHg.
pub fn laplace(tension: Tension, girth: Girth) -> Pressure {
    TAU * tension / girth_length(girth)
}

/// Layers that a wrap with an overlap (a share of its width, 0 to below 1) puts on every place:
/// n = 1 / (1 − overlap). None outside that range.
///
/// Source: derived; 50 % gives 2, two thirds give 3.
pub fn overlap_layers(overlap: f64) -> Option<f64> {
    (0.0..1.0).contains(&overlap).then(|| 1.0 / (1.0 - overlap))
}
