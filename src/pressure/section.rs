//! Owns sections that are not round: how far the local pressure lies from the mean over the girth.

use std::f64::consts::{PI, TAU};

/// An elliptic section by its two diameters.
#[derive(Clone, Copy, Debug)]
pub struct Ellipse {
    wide_cm: f64,
    deep_cm: f64,
}

impl Ellipse {
    /// From two diameters in cm; none unless 0 < deep <= wide.
    pub fn from_diameters(wide_cm: f64, deep_cm: f64) -> Option<Self> {
        (deep_cm > 0.0 && wide_cm >= deep_cm && wide_cm.is_finite()).then_some(Self { wide_cm, deep_cm })
    }

    /// Its circumference, cm, to the last binary places (arithmetic-geometric mean; derived).
    pub fn girth_cm(self) -> f64 {
        let (a0, b0) = (self.wide_cm / 2.0, self.deep_cm / 2.0);
        let (mut a, mut b) = (a0, b0);
        let mut sum = (a0 * a0 - b0 * b0) / 2.0;
        let mut power = 1.0;
        for _ in 0..40 {
            let c = (a - b) / 2.0;
            (a, b) = (f64::midpoint(a, b), (a * b).sqrt());
            sum += power * c * c;
            power *= 2.0;
            if c.abs() <= f64::EPSILON * a {
                break;
            }
        }
        TAU * (a0 * a0 - sum) / a
    }

    /// Pressure at the sharp end over the mean pressure of a girth: C·a/(2π·b²) (derived).
    pub fn sharp_over_mean(self, girth_cm: f64) -> f64 {
        let (a, b) = (self.wide_cm / 2.0, self.deep_cm / 2.0);
        girth_cm * a / (TAU * b * b)
    }

    /// Pressure on the flat side over the mean pressure of a girth: C·b/(2π·a²) (derived).
    pub fn flat_over_mean(self, girth_cm: f64) -> f64 {
        let (a, b) = (self.wide_cm / 2.0, self.deep_cm / 2.0);
        girth_cm * b / (TAU * a * a)
    }
}

/// Radius from a chord of half-width w and rise h, both above 0, any one unit: (w² + h²)/(2h).
///
/// Source: derived; (3, 1) gives 5.
pub fn radius_from_chord(half_width: f64, rise: f64) -> f64 {
    (half_width * half_width + rise * rise) / (2.0 * rise)
}

/// Share of the cylinder's hoop curvature that is left on a cone whose girth changes by `change_cm`
/// over `length_cm`: cos α, tan α = change of radius per length (derived).
pub fn cone_share(change_cm: f64, length_cm: f64) -> f64 {
    let slope = change_cm / (2.0 * PI) / length_cm;
    1.0 / slope.hypot(1.0)
}
