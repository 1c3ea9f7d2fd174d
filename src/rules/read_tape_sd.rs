//! Owns the reading of the tape's error by landmark.

use super::read::{LOW_ABOVE_HIGH, basis, limbs, text};
use super::{Limbs, TapeError, TapeSdRule};
use crate::input::{Item, landmark_fault};
use crate::quantity::Dimension;

/// An SD above this is no tape's, cm (house rule: ten times what is seen; it is more often a unit mistaken).
const MOST_CM: f64 = 5.0;

/// A share of the girth above this is no tape's (house rule, likewise).
const MOST_SHARE: f64 = 0.2;

pub(super) fn read_tape_sd(item: &Item<'_>) -> Option<TapeSdRule> {
    let fields = item.fields()?;
    let landmark = match fields.optional("landmark") {
        Some(item) => Some((item.landmark()?, item)),
        None => None,
    };
    let stated = match fields.optional("limb") {
        Some(item) => Some(limbs(&item)?),
        None => None,
    };
    let limbs = match (&landmark, stated) {
        (Some((landmark, item)), Some(Limbs::Only(limb))) if landmark.limb() != limb => {
            item.refuse(landmark_fault(limb, landmark.name()));
            return None;
        }
        (Some((landmark, _)), _) => Limbs::Only(landmark.limb()),
        (None, Some(limbs)) => limbs,
        (None, None) => {
            item.refuse("names neither `landmark` nor `limb`; add one, as `landmark: wrist`");
            return None;
        }
    };
    let cm = |item: &Item<'_>| {
        let cm = item.quantity(Dimension::Length)?.si() * 100.0;
        if cm > 0.0 && cm <= MOST_CM {
            return Some(cm);
        }
        let written = item.text().unwrap_or_default();
        item.refuse(format!("`{written}` is no error of a tape; write it as `0.35 cm`"));
        None
    };
    let error = match (fields.optional("sd"), fields.optional("share")) {
        (Some(sd), None) => TapeError::fixed(cm(&sd)?),
        (None, Some(item)) => {
            let share = item.quantity(Dimension::Ratio)?.si();
            if !(share > 0.0 && share <= MOST_SHARE) {
                let written = item.text().unwrap_or_default();
                item.refuse(format!("`{written}` is no error of a tape; write it as `1.5 %`"));
                return None;
            }
            let least_cm = cm(&fields.required("least", "the least SD, as `least: 0.25 cm`")?)?;
            let most_cm = cm(&fields.required("most", "the greatest SD, as `most: 0.45 cm`")?)?;
            if least_cm > most_cm {
                item.refuse(LOW_ABOVE_HIGH.replace("low", "least").replace("high", "most"));
                return None;
            }
            TapeError { share, least_cm, most_cm }
        }
        _ => {
            item.refuse("states either `sd: 0.25 cm`, or `share: 1.5 %` with `least` and `most`");
            return None;
        }
    };
    let rule = TapeSdRule {
        limbs,
        landmark: landmark.map(|(landmark, _)| landmark),
        error,
        basis: basis(&fields)?,
        why: text(&fields, "why")?,
    };
    fields.finish();
    Some(rule)
}
