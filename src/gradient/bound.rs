//! Owns what a mark beyond its curve's end says: its pressure is at least so much.

use super::point::{Assumed, PRESS, is_beyond, point};
use super::rise::pair;
use super::state::{State, nodes};
use super::{FallMark, FallSetting, Grade, GradientBasis, Part};
use crate::anatomy::Landmark;
use crate::quantity::phi;

/// A lower bound that lies above a mark below.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bound {
    /// Certain or likely.
    pub grade: Grade,
    /// The chance of it.
    pub chance: f64,
    /// The mark beyond the curve.
    pub place: Landmark,
    /// The mark below it.
    pub against: Landmark,
}

/// The least pressure at a mark beyond the curve, mmHg: tension does not fall with stretch.
pub(super) fn least_mmhg(mark: &FallMark, setting: &FallSetting<'_>) -> f64 {
    let rules = &setting.rules;
    let parts = mark.parts().iter().map(|part| match part {
        Part::Wrap(wrap) => wrap.mmhg,
        Part::Knit(part) => {
            let Some(curve) = setting.knits.get(part.knit).and_then(|knit| knit.curve) else { return 0.0 };
            if is_beyond(mark, part, &setting.knits, rules) {
                return PRESS * curve.last_tension() * part.layers / mark.girth_cm;
            }
            let stretch = mark.girth_cm / part.relaxed_cm - 1.0;
            let tension = curve.tension(stretch.max(0.0)).map_or(0.0, |(tension, _)| tension);
            PRESS * tension * part.layers / mark.girth_cm
        }
    });
    mark.share * parts.sum::<f64>()
}

/// The worst that the bounds say; none where they say nothing.
pub(super) fn bound(state: &State<'_>, setting: &FallSetting<'_>) -> Option<Bound> {
    let delta = setting.delta();
    let assumed = Assumed { exponent: 1.0, errors: &[] };
    let mut worst: Option<Bound> = None;
    for mark in &state.left_out {
        let (ln, own) = (least_mmhg(mark, setting).ln(), mark.girth_sd_cm / mark.girth_cm);
        for below in state.estimated.iter().filter(|below| below.at_cm < mark.at_cm) {
            let Some(held) = point(below, setting.basis, &setting.knits, assumed, &setting.rules) else {
                continue;
            };
            let chance = phi((ln - held.y - delta) / held.s.hypot(own));
            if worst.is_none_or(|worst| chance > worst.chance) && chance > setting.rules.likely {
                let grade = if chance >= setting.rules.certain { Grade::Certain } else { Grade::Likely };
                worst = Some(Bound { grade, chance, place: mark.landmark, against: below.landmark });
            }
        }
    }
    worst
}

/// The chance that a mark lies above another by a rise that counts, averaged over every assumption: for the
/// band of an edge against the garment under it. By its lower bound where it lies beyond its curve; none where
/// the one under it does, or nothing is known.
pub fn held_against(under: &FallMark, over: &FallMark, setting: &FallSetting<'_>) -> Option<f64> {
    let known = |mark: &FallMark| {
        setting.basis != GradientBasis::Fabric
            || mark.parts().iter().all(|part| match part {
                Part::Knit(part) => !is_beyond(mark, part, &setting.knits, &setting.rules),
                Part::Wrap(_) => true,
            })
    };
    if !known(under) {
        return None;
    }
    let delta = setting.delta();
    if !known(over) {
        let assumed = Assumed { exponent: 1.0, errors: &[] };
        let held = point(under, setting.basis, &setting.knits, assumed, &setting.rules)?;
        let own = over.girth_sd_cm / over.girth_cm;
        return Some(phi((least_mmhg(over, setting).ln() - held.y - delta) / held.s.hypot(own)));
    }
    let mut sum = None;
    for node in nodes(&[under, over], setting) {
        let [below, above] = node.points.as_slice() else { return None };
        if node.weight > 0.0 {
            sum = Some(sum.unwrap_or(0.0) + node.weight * pair(*below, *above, delta));
        }
    }
    sum
}
