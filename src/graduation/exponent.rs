//! Owns what decides a pair that the stretch alone does not decide.

use super::{Grade, Graduation, Point, Value};
use crate::anatomy::Landmark;
use crate::pressure::stretch;

/// For which curves T ∝ e^b the pressure falls between two marks, at the measured values.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FallsWhen {
    /// For exponents below this one.
    Below(f64),
    /// For exponents above this one.
    Above(f64),
    /// For every exponent above 0.
    Always,
    /// For none.
    Never,
}

/// What decides an undecided pair.
#[derive(Clone, Copy, Debug)]
pub struct Undecided {
    /// The mark nearer hand or foot.
    pub distal: Landmark,
    /// The mark nearer the trunk.
    pub proximal: Landmark,
    /// Stretch at each, a fraction.
    pub stretches: (f64, f64),
    /// The pressure falls just when the tension at the proximal stretch is less than this many times
    /// that at the distal one: C₂/C₁, whatever the curve (derived).
    pub level_tension_ratio: f64,
    /// The same as an exponent.
    pub falls: FallsWhen,
    /// Whether it is a comparison of the two ends, which a mark between does not replace.
    pub ends: bool,
}

/// The undecided pairs of a comparison by stretch, each once.
pub fn undecided(points: &[Point], graduation: &Graduation) -> Vec<Undecided> {
    let mut found: Vec<Undecided> = Vec::new();
    let pairs = graduation.pairs.iter().map(|pair| (pair, false));
    for (pair, ends) in pairs.chain(graduation.end_to_end.iter().map(|pair| (pair, true))) {
        let known = found.iter().any(|one| one.distal == pair.distal && one.proximal == pair.proximal);
        if pair.grade != Some(Grade::Undecided) || known {
            continue;
        }
        let worn = |landmark| {
            points.iter().find(|point| point.landmark == landmark).and_then(|point| match point.value {
                Value::Stretch { girth, relaxed, .. } => Some((girth, relaxed)),
                Value::Pressure { .. } | Value::NotEstimated => None,
            })
        };
        let (Some((below, slack_below)), Some((above, slack_above))) =
            (worn(pair.distal), worn(pair.proximal))
        else {
            continue;
        };
        let stretches = (stretch(below, slack_below), stretch(above, slack_above));
        if stretches.0 <= 0.0 || stretches.1 <= 0.0 {
            continue;
        }
        let ratio = above.cm() / below.cm();
        found.push(Undecided {
            distal: pair.distal,
            proximal: pair.proximal,
            stretches,
            level_tension_ratio: ratio,
            falls: falls_when(stretches.1 / stretches.0, ratio),
            ends,
        });
    }
    found
}

/// ln(P₂/P₁) = b ln(e₂/e₁) − ln(C₂/C₁) is below 0 for which b > 0 (derived).
fn falls_when(stretch_ratio: f64, girth_ratio: f64) -> FallsWhen {
    let (rise, fall) = (stretch_ratio.ln(), girth_ratio.ln());
    let level = fall / rise;
    if rise > 0.0 {
        if fall > 0.0 { FallsWhen::Below(level) } else { FallsWhen::Never }
    } else if rise < 0.0 {
        if fall < 0.0 { FallsWhen::Above(level) } else { FallsWhen::Always }
    } else if fall > 0.0 {
        FallsWhen::Always
    } else {
        FallsWhen::Never
    }
}
