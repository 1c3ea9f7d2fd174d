//! Owns the search for probable slips behind a girth that is asked about: which single changes of
//! the limb as written would pass every band, nearest to the usual limb first.
//!
//! Applies none.
//!
//! Source: bands and the usual limb of the rules, fitted to 507 adults (Heinz et al. 2003, J Stat
//! Educ 11(2)); the list of slips is a house rule.

use std::f64::consts::PI;

use super::slip::{Slip, SlipKind};
use super::usual::distance;
use crate::anatomy::Landmark;
use crate::quantity::Girth;
use crate::rules::Rules;

/// Centimetres in an inch. Basis: derived (unit definition).
const CM_PER_INCH: f64 = 2.54;

/// A limb's girths by landmark, distal to proximal, tenths of a millimetre.
pub(super) type Girths = Vec<(Option<Landmark>, i64)>;

/// The slips that would explain the limb, nearest to the usual limb first. `confirmed` marks stand
/// as they are and are not held against a band.
pub(super) fn slips(girths: &Girths, confirmed: &[Landmark], rules: &Rules) -> Vec<Slip> {
    let mut found: Vec<(SlipKind, bool, Girths)> = Vec::new();
    for (at, (landmark, girth)) in girths.iter().enumerate() {
        let Some(landmark) = landmark.filter(|one| !confirmed.contains(one) && is_banded(*one, rules)) else {
            continue;
        };
        for (kind, instead) in of_one(*girth) {
            let mut mended = girths.clone();
            if let Some(place) = mended.get_mut(at) {
                *place = (Some(landmark), instead);
            }
            found.push((kind, false, mended));
        }
    }
    found.extend(exchanges(girths, confirmed, rules));
    let factors = [
        (SlipKind::Point, 10.0),
        (SlipKind::Point, 0.1),
        (SlipKind::Inches, CM_PER_INCH),
        (SlipKind::NotInches, 1.0 / CM_PER_INCH),
        (SlipKind::Diameters, PI),
    ];
    for (kind, factor) in factors {
        let mended = girths.iter().map(|(landmark, girth)| (*landmark, scaled(*girth, factor))).collect();
        found.push((kind, true, mended));
    }
    let mended = girths
        .iter()
        .zip(girths.iter().rev())
        .map(|((landmark, _), (_, girth))| (*landmark, *girth))
        .collect();
    found.push((SlipKind::Reversed, true, mended));

    let mut slips: Vec<(Slip, Girths)> = Vec::new();
    for (kind, whole_limb, mended) in found {
        let known = slips.iter().any(|(_, earlier)| *earlier == mended);
        if known || !passes(&mended, confirmed, rules) {
            continue;
        }
        let instead = mended
            .iter()
            .zip(girths)
            .filter(|(new, old)| new.1 != old.1)
            .filter_map(|((landmark, girth), _)| Some(((*landmark)?, Girth::from_tenths(*girth)?)))
            .collect();
        let distance = distance(&mended, rules);
        slips.push((Slip { kind, whole_limb, instead, distance }, mended));
    }
    slips.sort_by(|(one, _), (other, _)| one.distance.total_cmp(&other.distance));
    slips.into_iter().map(|(slip, _)| slip).collect()
}

fn is_banded(landmark: Landmark, rules: &Rules) -> bool {
    rules.plausible.iter().any(|band| band.landmark == landmark)
}

fn scaled(tenths: i64, factor: f64) -> i64 {
    // Girths stay below 200 cm, 20 000 tenths of a millimetre.
    #[expect(clippy::cast_possible_truncation, clippy::cast_precision_loss, reason = "below 2^53 by far")]
    let scaled = (tenths as f64 * factor).round() as i64;
    scaled
}

/// What one girth might have been.
fn of_one(tenths: i64) -> Vec<(SlipKind, i64)> {
    let mut all = vec![
        (SlipKind::Point, tenths * 10),
        (SlipKind::Point, scaled(tenths, 0.1)),
        (SlipKind::Inches, scaled(tenths, CM_PER_INCH)),
        (SlipKind::NotInches, scaled(tenths, 1.0 / CM_PER_INCH)),
    ];
    // A digit lost before the number as written: tens of a girth below 10 cm, the hundred of any.
    if tenths < 1_000 {
        all.extend((1..=9).map(|tens| (SlipKind::LostDigit, tenths + tens * 1_000)));
    }
    if tenths < 10_000 {
        all.push((SlipKind::LostDigit, tenths + 10_000));
    }
    all.extend(swapped_digits(tenths).into_iter().map(|instead| (SlipKind::Digits, instead)));
    all.retain(|(_, instead)| *instead != tenths && Girth::from_tenths(*instead).is_some());
    all
}

/// Two neighbouring digits of the centimetres as written (to the millimetre) swapped.
fn swapped_digits(tenths: i64) -> Vec<i64> {
    if tenths % 10 != 0 {
        return Vec::new();
    }
    let digits = (tenths / 10).to_string().into_bytes();
    (1..digits.len())
        .filter_map(|at| {
            let mut swapped = digits.clone();
            swapped.swap(at - 1, at);
            let number: i64 = String::from_utf8(swapped).ok()?.parse().ok()?;
            Some(number * 10)
        })
        .collect()
}

/// Each two neighbours, among the marks that have a band, exchanged.
fn exchanges(girths: &Girths, confirmed: &[Landmark], rules: &Rules) -> Vec<(SlipKind, bool, Girths)> {
    let banded: Vec<(usize, i64)> = girths
        .iter()
        .enumerate()
        .filter(|(_, (landmark, _))| {
            landmark.is_some_and(|one| !confirmed.contains(&one) && is_banded(one, rules))
        })
        .map(|(at, (_, girth))| (at, *girth))
        .collect();
    let mut all = Vec::new();
    for pair in banded.windows(2) {
        let [(one, first), (other, second)] = pair else { continue };
        let mut mended = girths.clone();
        for (at, girth) in [(one, second), (other, first)] {
            if let Some(place) = mended.get_mut(*at) {
                place.1 = *girth;
            }
        }
        if first != second {
            all.push((SlipKind::Exchanged, false, mended));
        }
    }
    all
}

/// Whether a limb passes every band and ratio; bands of confirmed marks are not asked.
fn passes(girths: &Girths, confirmed: &[Landmark], rules: &Rules) -> bool {
    let cm = |landmark: Landmark| {
        girths
            .iter()
            .find(|(one, _)| *one == Some(landmark))
            .and_then(|(_, girth)| Girth::from_tenths(*girth))
            .map(Girth::cm)
    };
    girths.iter().all(|(_, girth)| Girth::from_tenths(*girth).is_some())
        && rules
            .plausible
            .iter()
            .filter(|band| !confirmed.contains(&band.landmark))
            .all(|band| cm(band.landmark).is_none_or(|girth| (band.low_cm..=band.high_cm).contains(&girth)))
        && rules
            .ratios
            .iter()
            .filter(|ratio| !(confirmed.contains(&ratio.of) && confirmed.contains(&ratio.to)))
            .all(|ratio| {
                cm(ratio.of)
                    .zip(cm(ratio.to))
                    .is_none_or(|(of, to)| (ratio.low..=ratio.high).contains(&(of / to)))
            })
}
