//! Owns a fabric's curve and one size's relaxed girths in the form that a caseload runs on.

use super::case::{Case, PLACES, place};
use crate::anatomy::Landmark;
use crate::estimate::EstimateRules;
use crate::garment::{Chart, Fabric, Garment};
use crate::quantity::{PASCAL_PER_MMHG, phi_quick};
use crate::rules::TapeSd;

/// mmHg of one N/m over one cm (derived: 2π in cm, in mmHg).
const PRESS: f64 = std::f64::consts::TAU * 100.0 / PASCAL_PER_MMHG;

/// Points closer than this in stretch are one (as the fabric has it).
const ON_POINT: f64 = 1e-9;

/// How near to a limit the quick chance leaves the answer to the exact one (house rule: ten times its error).
const NEAR: f64 = 1e-9;

/// A fabric's curve by segments.
#[derive(Clone, Debug)]
pub(super) struct Curve {
    segments: Vec<(f64, f64, f64)>,
    last: (f64, f64),
    tension_sd: f64,
    relaxed_sd: f64,
}

/// A pressure with its errors.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Pressed {
    /// No contact.
    Slack,
    /// At least so much, mmHg.
    Beyond(f64),
    /// mmHg, its SD, and the SD by tape and ruler alone.
    Known { mmhg: f64, sd: f64, own: f64 },
}

/// A mark of one size.
#[derive(Clone, Copy, Debug)]
pub(super) struct KnitMark {
    pub(super) landmark: Landmark,
    pub(super) place: usize,
    relaxed_cm: f64,
    relaxed_sd: f64,
    judged: bool,
}

/// One size as a garment.
#[derive(Clone, Debug)]
pub(super) struct Knit {
    pub(super) marks: Vec<KnitMark>,
    layers: f64,
    has_fall: bool,
}

impl Curve {
    /// The curve of a chart's fabric; none without one.
    pub(super) fn of(fabric: Option<&Fabric>, rules: &EstimateRules) -> Option<Self> {
        let fabric = fabric.filter(|fabric| fabric.has_curve())?;
        let segments = fabric.curve.windows(2).filter_map(|pair| match pair {
            [(low, tension), (high, above)] => Some((*low, *tension, (above - tension) / (high - low))),
            _ => None,
        });
        Some(Self {
            segments: segments.collect(),
            last: fabric.last_point()?,
            tension_sd: fabric.tension_sd.unwrap_or(rules.tension_sd),
            relaxed_sd: fabric.relaxed_sd_cm.unwrap_or(rules.relaxed_sd_cm),
        })
    }

    /// Tension of one layer and its slope; none beyond the last point.
    fn at(&self, stretch: f64) -> Option<(f64, f64)> {
        if stretch > self.last.0 + ON_POINT {
            return None;
        }
        let from = self.segments.iter().rev().find(|(low, _, _)| stretch >= low - ON_POINT);
        let (low, tension, slope) = from.or(self.segments.first())?;
        Some((tension + slope * (stretch - low), *slope))
    }
}

impl Knit {
    /// A size of a chart.
    pub(super) fn of(chart: &Chart, garment: &Garment, curve: Option<&Curve>) -> Self {
        let judged = |landmark: Landmark| !landmark.on_extremity() && !landmark.is_joint();
        let marks = garment.relaxed.iter().map(|(landmark, relaxed)| KnitMark {
            landmark: *landmark,
            place: place(*landmark),
            relaxed_cm: relaxed.girth.cm(),
            relaxed_sd: curve.map_or(0.0, |curve| relaxed.sd(curve.relaxed_sd)),
            judged: judged(*landmark) && (garment.from..=garment.to).contains(landmark),
        });
        let all = Landmark::of(chart.limb).iter();
        let between = all.filter(|one| judged(**one) && (garment.from..=garment.to).contains(*one)).count();
        Self { marks: marks.collect(), layers: f64::from(garment.layers.max(1)), has_fall: between >= 2 }
    }

    /// The pressure at a mark on a girth in tenths of a millimetre.
    pub(super) fn pressed(&self, mark: &KnitMark, tenths: i32, curve: &Curve, tape: &TapeSd) -> Pressed {
        let girth = f64::from(tenths) / 100.0;
        if girth <= mark.relaxed_cm {
            return Pressed::Slack;
        }
        let stretch = girth / mark.relaxed_cm - 1.0;
        let scale = PRESS * self.layers;
        let Some((tension, slope)) = curve.at(stretch) else {
            return Pressed::Beyond(scale * curve.last.1 / girth);
        };
        let mmhg = scale * tension / girth;
        let per_girth = scale * ((1.0 + stretch) * slope - tension) / (girth * girth);
        let per_relaxed = scale * slope * (1.0 + stretch) / (girth * mark.relaxed_cm);
        let tape = tape.of_mean(mark.landmark.limb(), Some(mark.landmark), girth, 1);
        let own = (tape * per_girth).powi(2) + (mark.relaxed_sd * per_relaxed).powi(2);
        let sd = (own + (curve.tension_sd * mmhg).powi(2)).sqrt();
        Pressed::Known { mmhg, sd, own: own.sqrt() }
    }

    /// Whether it is plain that no certain rise takes the size out; where it is not, the rule of the fall
    /// decides.
    pub(super) fn plainly_falls(&self, case: &Case, curve: &Curve, rules: &EstimateRules) -> bool {
        if !self.has_fall {
            return true;
        }
        let fall = &rules.fall;
        let mut points = [(0.0_f64, 0.0_f64); PLACES];
        let mut count = 0;
        for mark in self.marks.iter().filter(|mark| mark.judged) {
            let tenths = case.girth(mark.place);
            if tenths <= 0 {
                continue;
            }
            let girth = f64::from(tenths) / 100.0;
            let tape = rules.tape.of_mean(mark.landmark.limb(), Some(mark.landmark), girth, 1);
            let error = tape * tape + (mark.relaxed_sd * girth / mark.relaxed_cm).powi(2);
            let over = girth - mark.relaxed_cm;
            // Below half the error of the difference another girth counts.
            if over <= 0.0 || over * over < fall.contact * fall.contact * error {
                return false;
            }
            let Pressed::Known { mmhg, own, .. } = self.pressed(mark, tenths, curve, &rules.tape) else {
                return false;
            };
            let s = (own / mmhg).clamp(fall.least_sd, fall.most_sd);
            if let Some(slot) = points.get_mut(count) {
                *slot = (mmhg.ln(), s);
            }
            count += 1;
        }
        let points = points.get(..count).unwrap_or_default();
        let steps = f64::from(u32::try_from(count.saturating_sub(1)).unwrap_or(1).max(1));
        let (certain, delta) = (1.0 - fall.pair_error / steps, fall.rise.ln_1p());
        let mut sum = 0.0;
        for (number, (y, s)) in points.iter().enumerate() {
            for (below, t) in points.iter().take(number) {
                let (rise, square) = (y - below, s * s + t * t);
                // Six SDs below lie 1e-9.
                if rise < 0.0 && rise * rise > 36.0 * square {
                    sum += NEAR;
                    continue;
                }
                let spread = square.sqrt();
                if phi_quick(rise / spread) >= certain - NEAR {
                    return false;
                }
                sum += phi_quick((rise - delta) / spread);
            }
        }
        let odds = f64::from(u32::try_from(count.saturating_sub(2)).unwrap_or(1)).max(1.0);
        let most = (sum + NEAR).min(1.0);
        most / (most + odds * (1.0 - most)) < fall.certain
    }
}
