//! Owns a fabric: tension per unit worn width against stretch, one layer, return branch.

use super::{Bench, Branch, Exponent};
use crate::input::Text;
use crate::rules::Basis;

/// Points closer than this in stretch are one point (house rule: far below any test's resolution).
const ON_POINT: f64 = 1e-9;

/// A fabric: a tension curve, straight between its points, or an exponent from two pulls, or both.
#[derive(Clone, Debug)]
pub struct Fabric {
    /// Its label.
    pub label: Text,
    /// The file it was read from.
    pub file: String,
    /// What the curve rests on.
    pub basis: Basis,
    /// Relative SD of the tension, a fraction; none = the rules' number.
    pub tension_sd: Option<f64>,
    /// SD of a relaxed girth measured once, cm; none = the rules' number.
    pub relaxed_sd_cm: Option<f64>,
    /// The exponent of tension against stretch, where a strip was pulled or a file states it.
    pub exponent: Option<Exponent>,
    /// Where the curve comes from, in words, when the file or a test says so.
    pub note: Option<Text>,
    /// On which branch the curve was read.
    pub branch: Branch,
    /// Points: stretch as a fraction, tension in N/m; rising, from 0, 0; empty = no curve, an exponent only.
    pub curve: Vec<(f64, f64)>,
    /// The curve of the loading branch, where both branches were measured.
    pub loading: Option<Vec<(f64, f64)>>,
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
    /// Whether there is a curve, so that a pressure can be estimated.
    pub fn has_curve(&self) -> bool {
        self.curve.len() >= 2
    }

    /// The last point tested: stretch, a fraction, and tension, N/m; none without a curve.
    pub fn last_point(&self) -> Option<(f64, f64)> {
        self.curve.last().copied().filter(|_| self.has_curve())
    }

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
    pub fn calibrated(&self, factor: f64, sd: f64, note: &str) -> Self {
        Self {
            label: Text::new(&format!("{} (calibrated)", self.label)).unwrap_or_else(|_| self.label.clone()),
            tension_sd: Some(sd / factor),
            note: Text::new(note).ok(),
            curve: self.curve.iter().map(|(stretch, tension)| (*stretch, tension * factor)).collect(),
            loading: None,
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
