//! Owns which further measurement would most likely decide a fall that is not decided.

use super::judge::grade_of;
use super::nodes::{HERMITE_9, LEGENDRE_5};
use super::state::{is_judged, settle};
use super::{Band, Fall, FallMark, FallSetting, Grade, GradientBasis, KnitPart, MarkKind, Part};
use crate::anatomy::Landmark;

/// A further measurement, cheapest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Action {
    /// The flat width again.
    FlatWidth,
    /// The tape again.
    Tape,
    /// A strip of the knit pulled at two weights.
    StripPull,
    /// A curve of the knit.
    Curve,
    /// A curve to more stretch.
    CurveFurther,
    /// The sensor again.
    ReadAgain,
    /// Sensor readings at all judged marks.
    SensorReadings,
}

impl Action {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::FlatWidth => "flat-width",
            Self::Tape => "tape",
            Self::StripPull => "strip-pull",
            Self::Curve => "curve",
            Self::CurveFurther => "curve-further",
            Self::ReadAgain => "read-again",
            Self::SensorReadings => "sensor-readings",
        }
    }
}

/// One further measurement.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Decide {
    /// What.
    pub action: Action,
    /// Where; none for the garment as a whole.
    pub landmark: Option<Landmark>,
    /// Of which piece, by its number; none where it is no piece's.
    pub piece: Option<usize>,
    /// The chance that it decides; none where that is not worked out.
    pub chance: Option<f64>,
}

/// What would decide a fall whose grade is undecided, the measurement to name first; empty for any other.
pub fn decide(marks: &[FallMark], setting: &FallSetting<'_>, fall: &Fall) -> Vec<Decide> {
    if fall.grade != Grade::Undecided || fall.estimated.len() + fall.left_out.len() < 2 {
        return Vec::new();
    }
    if let Some(landmark) = fall.left_out.first() {
        return vec![Decide {
            action: Action::CurveFurther,
            landmark: Some(*landmark),
            piece: None,
            chance: None,
        }];
    }
    if setting.basis == GradientBasis::Readings {
        return vec![Decide { action: Action::ReadAgain, landmark: fall.place, piece: None, chance: None }];
    }
    let mut all: Vec<Decide> = Vec::new();
    let mut told: Vec<(Landmark, Option<usize>)> = Vec::new();
    // A point just beyond an edge shares girth and flat width with the mark of its landmark.
    let mut is_new = |landmark: Landmark, piece: Option<usize>| {
        let new = !told.contains(&(landmark, piece));
        told.push((landmark, piece));
        new
    };
    for mark in marks.iter().filter(|mark| is_judged(mark.landmark)) {
        let landmark = Some(mark.landmark);
        for part in mark.parts() {
            let Part::Knit(part) = part else { continue };
            if is_new(mark.landmark, Some(part.piece)) {
                let chance = Some(by_flat_width(marks, setting, mark.landmark, part));
                all.push(Decide { action: Action::FlatWidth, landmark, piece: Some(part.piece), chance });
            }
        }
        if is_new(mark.landmark, None) {
            let chance = Some(by_tape(marks, setting, mark));
            all.push(Decide { action: Action::Tape, landmark, piece: None, chance });
        }
    }
    if setting.basis == GradientBasis::Stretch && setting.band.width() > setting.rules.wide_band + 1e-9 {
        for (action, half) in [(Action::StripPull, setting.rules.strip_band), (Action::Curve, 0.0)] {
            let chance = by_exponent(marks, setting, half);
            all.push(Decide { action, landmark: None, piece: None, chance: Some(chance) });
        }
    }
    ordered(all, setting)
}

/// The one to name first, then the others, most likely first.
fn ordered(mut all: Vec<Decide>, setting: &FallSetting<'_>) -> Vec<Decide> {
    let chance = |one: &Decide| one.chance.unwrap_or_default();
    all.sort_by(|one, other| chance(other).total_cmp(&chance(one)).then(one.action.cmp(&other.action)));
    let most = all.first().map_or(0.0, chance);
    if most < setting.rules.least_chance {
        all.insert(0, Decide { action: Action::SensorReadings, landmark: None, piece: None, chance: None });
        return all;
    }
    let near = |one: &Decide| chance(one) >= most - setting.rules.cheaper;
    // The list is ordered by chance, so the first of the least action is its most likely.
    let named =
        all.iter().enumerate().filter(|(_, one)| near(one)).min_by_key(|(number, one)| (one.action, *number));
    if let Some((number, _)) = named {
        let first = all.remove(number);
        all.insert(0, first);
    }
    all
}

fn decided(marks: &[FallMark], setting: &FallSetting<'_>) -> bool {
    grade_of(&settle(marks, setting), setting) != Grade::Undecided
}

/// SD of the change of a mean by one more value, and the factor of its own SD, `taken` values so far.
fn one_more(taken: u32, sd: f64) -> (f64, f64) {
    let taken = f64::from(taken.max(1));
    (sd * (1.0 / (taken + 1.0)).sqrt(), sd * (taken / (taken + 1.0)).sqrt())
}

fn by_flat_width(marks: &[FallMark], setting: &FallSetting<'_>, landmark: Landmark, part: &KnitPart) -> f64 {
    let (change, sd) = one_more(part.flat_widths, part.relaxed_sd_cm);
    over_normal(|z| {
        let relaxed_cm = part.relaxed_cm + z * change;
        let mut marks = marks.to_vec();
        for mark in marks.iter_mut().filter(|mark| mark.landmark == landmark) {
            let MarkKind::Worn(parts) = &mut mark.what else { continue };
            for held in parts {
                if let Part::Knit(held) = held
                    && held.piece == part.piece
                {
                    (held.relaxed_cm, held.relaxed_sd_cm) = (relaxed_cm, sd);
                    held.flat_widths = part.flat_widths + 1;
                }
            }
        }
        relaxed_cm > 0.0 && decided(&marks, setting)
    })
}

fn by_tape(marks: &[FallMark], setting: &FallSetting<'_>, mark: &FallMark) -> f64 {
    let (change, sd) = one_more(mark.tapes, mark.girth_sd_cm);
    over_normal(|z| {
        let girth_cm = mark.girth_cm + z * change;
        let mut marks = marks.to_vec();
        for held in marks.iter_mut().filter(|held| held.landmark == mark.landmark) {
            (held.girth_cm, held.girth_sd_cm, held.tapes) = (girth_cm, sd, mark.tapes + 1);
        }
        girth_cm > 0.0 && decided(&marks, setting)
    })
}

fn by_exponent(marks: &[FallMark], setting: &FallSetting<'_>, half: f64) -> f64 {
    let (middle, width) = (f64::midpoint(setting.band.low, setting.band.high), setting.band.width());
    LEGENDRE_5
        .iter()
        .filter(|(place, _)| {
            let exponent = middle + width / 2.0 * place;
            decided(marks, &FallSetting { band: Band::around(exponent, half), ..setting.clone() })
        })
        .map(|(_, weight)| weight)
        .sum::<f64>()
        .min(1.0)
}

fn over_normal(holds: impl Fn(f64) -> bool) -> f64 {
    // The weights add up to 1 but for the last bit.
    HERMITE_9.iter().filter(|(z, _)| holds(*z)).map(|(_, weight)| weight).sum::<f64>().min(1.0)
}
