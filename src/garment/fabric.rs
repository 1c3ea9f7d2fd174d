//! Owns a fabric: tension per unit worn width against stretch, one layer, return branch.

use super::Bench;
use crate::rules::Basis;

/// Points closer than this in stretch are one point (house rule: far below any test's resolution).
const ON_POINT: f64 = 1e-9;

/// A fabric's tension curve, straight between its points.
#[derive(Clone, Debug)]
pub struct Fabric {
    /// Its label.
    pub label: String,
    /// What the curve rests on.
    pub basis: Basis,
    /// Relative SD of the tension, a fraction; none = the rules' number.
    pub tension_sd: Option<f64>,
    /// SD of a relaxed girth, cm; none = the rules' number.
    pub relaxed_sd_cm: Option<f64>,
    /// Where the curve comes from, in words, when the file or a test says so.
    pub note: Option<String>,
    /// Points: stretch as a fraction, tension in N/m; rising, from 0, 0.
    pub curve: Vec<(f64, f64)>,
    /// The bench test that the curve was pooled from, if it was.
    pub tested: Option<Bench>,
}

/// Tension at a stretch, one layer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tensed {
    /// Tension, N/m.
    pub newton_per_metre: f64,
    /// Slope of the tension against stretch, N/m per unit stretch.
    pub slope: f64,
}

impl Fabric {
    /// The last tested stretch, a fraction.
    pub fn last_stretch(&self) -> f64 {
        self.curve.last().map_or(0.0, |(stretch, _)| *stretch)
    }

    /// The stretch at which one layer has a tension of at least 0 N/m; none beyond the last tested point.
    pub fn stretch_at(&self, newton_per_metre: f64) -> Option<f64> {
        self.curve.windows(2).find_map(|pair| {
            let [(low, tension), (high, above)] = pair else { return None };
            let inside = newton_per_metre >= *tension && newton_per_metre <= above * (1.0 + 1e-12);
            inside.then(|| low + (newton_per_metre - tension) / (above - tension) * (high - low))
        })
    }

    /// The same fabric with its tension times `factor`, labelled calibrated.
    #[must_use]
    pub fn calibrated(&self, factor: f64, sd: f64, note: String) -> Self {
        Self {
            label: format!("{} (calibrated)", self.label),
            tension_sd: Some(sd / factor),
            note: Some(note),
            curve: self.curve.iter().map(|(stretch, tension)| (*stretch, tension * factor)).collect(),
            tested: None,
            ..self.clone()
        }
    }

    /// Whether it is the same fabric: label and curve alike.
    pub fn is_same(&self, other: &Self) -> bool {
        let bits = |one: &Self| one.curve.iter().map(|(e, t)| (e.to_bits(), t.to_bits())).collect::<Vec<_>>();
        self.label == other.label && bits(self) == bits(other)
    }

    /// Tension at a stretch of at least 0; none beyond the last tested point. Segments are closed
    /// below and open above, the last one closed.
    pub fn at(&self, stretch: f64) -> Option<Tensed> {
        if stretch > self.last_stretch() + ON_POINT {
            return None;
        }
        let segments = self.curve.windows(2);
        let mut found = None;
        for pair in segments {
            let [(low, tension), (high, above)] = pair else { continue };
            let slope = (above - tension) / (high - low);
            if found.is_none() || stretch >= low - ON_POINT {
                found = Some(Tensed { newton_per_metre: tension + slope * (stretch - low), slope });
            }
        }
        found
    }
}
