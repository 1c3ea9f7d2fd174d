//! Owns the pressure of a mark under one assumption, as a logarithm with its own SD.

use std::f64::consts::TAU;

use super::{FallMark, FallRules, GradientBasis, Knit, KnitPart, MarkKind, Part};
use crate::quantity::PASCAL_PER_MMHG;

/// mmHg of one N/m over one cm. Basis: derived (2π in cm, in mmHg).
pub(super) const PRESS: f64 = TAU * 100.0 / PASCAL_PER_MMHG;

/// A mark under one assumption.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Point {
    /// Where along the limb, cm.
    pub x: f64,
    /// ln of the pressure, up to a constant common to all marks.
    pub y: f64,
    /// Its own SD.
    pub s: f64,
}

/// What is assumed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Assumed<'e> {
    /// Exponent of the tension, by stretch.
    pub exponent: f64,
    /// Relative error of each knit's tension, by fabric; missing = 0.
    pub errors: &'e [f64],
}

/// A pressure with its slopes, mmHg or any unit common to all marks.
#[derive(Clone, Copy, Debug, Default)]
struct Pressing {
    value: f64,
    /// The same under the assumed error of the knit; the slopes leave that error out.
    assumed: f64,
    /// Against the girth.
    per_girth: f64,
    /// Variance by the relaxed girth or a wrap's pull.
    own: f64,
}

/// How far the limb is over the relaxed garment.
#[derive(Clone, Copy, Debug)]
pub(super) struct Contact {
    /// SD of the difference, g.
    pub sd: f64,
    /// The difference itself, cm.
    pub over: f64,
}

/// The difference of girth and relaxed girth with its SD `√(σ_C² + (σ_0·C/C0)²)` (derived).
pub(super) fn contact(mark: &FallMark, part: &KnitPart) -> Contact {
    let sd = mark.girth_sd_cm.hypot(part.relaxed_sd_cm * mark.girth_cm / part.relaxed_cm);
    Contact { sd, over: mark.girth_cm - part.relaxed_cm }
}

/// The girth that counts: no contact is low and unsure, never nothing.
fn worn_girth(mark: &FallMark, part: &KnitPart, rules: &FallRules) -> f64 {
    let contact = contact(mark, part);
    part.relaxed_cm + contact.over.max(contact.sd * rules.contact)
}

/// Whether a part lies beyond its curve's end.
pub(super) fn is_beyond(mark: &FallMark, part: &KnitPart, knits: &[Knit<'_>], rules: &FallRules) -> bool {
    let stretch = worn_girth(mark, part, rules) / part.relaxed_cm - 1.0;
    let curve = knits.get(part.knit).and_then(|knit| knit.curve);
    curve.is_none_or(|curve| curve.tension(stretch).is_none())
}

/// The point of a mark; none where a part cannot be estimated.
pub(super) fn point(
    mark: &FallMark,
    basis: GradientBasis,
    knits: &[Knit<'_>],
    assumed: Assumed<'_>,
    rules: &FallRules,
) -> Option<Point> {
    let (value, under_error, sd) = match &mark.what {
        MarkKind::Read { mmhg, sd } => (mmhg.max(sd / 2.0), mmhg.max(sd / 2.0), *sd),
        MarkKind::Worn(parts) => {
            let mut sum = Pressing::default();
            for part in parts {
                let one = match part {
                    Part::Wrap(wrap) => Pressing {
                        value: wrap.mmhg,
                        assumed: wrap.mmhg,
                        per_girth: wrap.per_girth,
                        own: wrap.pull_sd_mmhg * wrap.pull_sd_mmhg,
                    },
                    Part::Knit(part) if basis == GradientBasis::Stretch => {
                        by_stretch(mark, part, assumed, rules)
                    }
                    Part::Knit(part) => by_fabric(mark, part, knits, assumed, rules)?,
                };
                sum.value += one.value;
                sum.assumed += one.assumed;
                sum.per_girth += one.per_girth;
                sum.own += one.own;
            }
            (sum.value, sum.assumed, (mark.girth_sd_cm * sum.per_girth).hypot(sum.own.sqrt()))
        }
    };
    if value <= 0.0 || under_error <= 0.0 {
        return None;
    }
    let s = (sd / value).clamp(rules.least_sd, rules.most_sd);
    Some(Point { x: mark.at_cm, y: under_error.ln() + mark.share.ln(), s })
}

/// Layers · e^b / C, with its slopes (derived).
fn by_stretch(mark: &FallMark, part: &KnitPart, assumed: Assumed<'_>, rules: &FallRules) -> Pressing {
    let girth = worn_girth(mark, part, rules);
    let over = girth - part.relaxed_cm;
    let b = assumed.exponent;
    let value = part.layers * (over / part.relaxed_cm).powf(b) / girth;
    let per_relaxed = value * b * girth / (part.relaxed_cm * over);
    let own = (part.relaxed_sd_cm * per_relaxed).powi(2);
    Pressing { value, assumed: value, per_girth: value * (b / over - 1.0 / girth), own }
}

/// K·T/C with its slopes (derived).
fn by_fabric(
    mark: &FallMark,
    part: &KnitPart,
    knits: &[Knit<'_>],
    assumed: Assumed<'_>,
    rules: &FallRules,
) -> Option<Pressing> {
    let curve = knits.get(part.knit)?.curve?;
    let girth = worn_girth(mark, part, rules);
    let stretch = girth / part.relaxed_cm - 1.0;
    let (tension, slope) = curve.tension(stretch)?;
    let scale = PRESS * part.layers;
    let error = assumed.errors.get(part.knit).copied().unwrap_or_default();
    let per_girth = scale * ((1.0 + stretch) * slope - tension) / (girth * girth);
    let per_relaxed = scale * slope * (1.0 + stretch) / (girth * part.relaxed_cm);
    let value = scale * tension / girth;
    let own = (part.relaxed_sd_cm * per_relaxed).powi(2);
    Some(Pressing { value, assumed: value * (1.0 + error), per_girth, own })
}
