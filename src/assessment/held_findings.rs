//! Owns what pressures are held against: the limit of any mark, the band that is wanted at the reference.
//!
//! An estimate, its lower bound beyond the curve, and a sensor reading all count: knowing more never gives a
//! milder verdict.

use super::size_findings::Garments;
use super::wanted::{claim_printed, claimed_band};
use crate::estimate::{EstimateRules, Estimated, estimate};
use crate::finding::{self, Finding, Place};
use crate::garment::{Outfit, Piece};
use crate::rules::{NumberId, Rules, Severity};
use crate::words;

/// A pressure this near an end, as a share of it, lies on it (house rule, as for residual pressure).
const SLACK: f64 = 1e-9;

/// Marks above the limit, by estimate, bound or reading.
pub(super) fn high(estimated: &Estimated, place: Place, rules: &Rules) -> Option<Finding> {
    let limit = rules.number(NumberId::PressureLimit);
    let mut above: Vec<(crate::anatomy::Landmark, String)> = Vec::new();
    for mark in &estimated.marks {
        if let Some(mmhg) = mark.at_least_mmhg().filter(|mmhg| *mmhg > limit) {
            let least = if mark.bound_mmhg().is_some() { "at least " } else { "" };
            let said = format!("{least}{} estimated {}", words::mmhg(mmhg), words::at(mark.landmark));
            above.push((mark.landmark, said));
        }
    }
    let mut is_read = false;
    for (landmark, read) in &estimated.read {
        if read.mmhg > limit {
            is_read = true;
            above.push((*landmark, format!("{} read {}", words::mmhg(read.mmhg), words::at(*landmark))));
        }
    }
    above.sort_by_key(|(landmark, _)| *landmark);
    let first = above.first()?.0;
    let names: Vec<String> = above.into_iter().map(|(_, said)| said).collect();
    Some(finding::pressure_high::pressure_high(place.at(first), &words::list(&names), limit, is_read))
}

/// A pressure at the reference, as held against a band.
struct Held {
    /// mmHg.
    mmhg: f64,
    /// Whether it is the least that it can be.
    is_bound: bool,
    /// `The estimate is 27 mmHg at the wrist`.
    said: String,
}

/// The estimate at the reference as said; none where nothing is known.
pub(super) fn reference_words(estimated: &Estimated) -> Option<(f64, bool, String)> {
    let reference = &estimated.reference;
    let at = words::at(reference.landmark);
    match (reference.mmhg, reference.bound_mmhg) {
        (Some(mmhg), _) => Some((mmhg, false, format!("{} {at}", words::mmhg(mmhg)))),
        (None, Some(bound)) => Some((bound, true, format!("at least {} {at}", words::mmhg(bound)))),
        (None, None) => None,
    }
}

/// What is known at the reference: the estimate, and a reading unless it was taken in the hollow beside the
/// ankle bone, which never decides alone.
fn known(estimated: &Estimated) -> Vec<Held> {
    let at = estimated.reference.landmark;
    let estimate = reference_words(estimated).map(|(mmhg, is_bound, text)| Held {
        mmhg,
        is_bound,
        said: format!("The estimate is {text}"),
    });
    // A reading that contradicts the estimate is cleared first as such: one matter, said once.
    let contradicted = estimated
        .readings
        .as_ref()
        .is_some_and(|said| said.against.iter().any(|one| one.landmark == at && one.contradicts));
    let read = estimated.read.iter().find(|(landmark, read)| *landmark == at && !read.in_hollow);
    let read = read.filter(|_| !contradicted);
    let read = read.map(|(_, read)| Held {
        mmhg: read.mmhg,
        is_bound: false,
        said: format!("The reading is {} {}", words::mmhg(read.mmhg), words::at(at)),
    });
    estimate.into_iter().chain(read).collect()
}

/// The reference far off the band that is wanted, or with nothing to be held against.
pub(super) fn off_band(what: &Garments<'_>, place: Place, rules: &Rules) -> Option<Finding> {
    let claim = what.outfit.claim.as_ref();
    let known = known(what.estimated);
    let place = place.at(what.estimated.reference.landmark);
    let least = rules.number(NumberId::PressureLeast);
    let too_low = known.iter().find(|held| !held.is_bound && held.mmhg < least);
    let band = match (what.wanted, claimed_band(claim)) {
        (Some(wanted), _) => (wanted.low, wanted.high, format!("the prescribed {}", wanted.printed)),
        (None, Some(band)) => {
            (band.low, band.high, format!("the claimed {}", claim.map(claim_printed).unwrap_or_default()))
        }
        (None, None) => {
            if let Some(held) = too_low {
                return Some(finding::off_band::too_low(place, &held.said, least));
            }
            let limit = rules.number(NumberId::UnheldLimit);
            let highest = known.iter().max_by(|one, other| one.mmhg.total_cmp(&other.mmhg));
            let severity = match highest {
                Some(held) if held.mmhg > limit => Severity::ClearFirst,
                _ => Severity::Caution,
            };
            let said = highest.map(|held| held.said.as_str());
            let together = what.outfit.pieces.len() > 1;
            return Some(finding::nothing_to_hold::nothing_to_hold(place, severity, said, together));
        }
    };
    let (low, high, name) = band;
    match (known.iter().find(|held| is_off(held, low, high, rules)), too_low) {
        (Some(held), _) => Some(finding::off_band::off_band(place, &held.said, &name)),
        (None, Some(held)) => Some(finding::off_band::too_low(place, &held.said, least)),
        (None, None) => None,
    }
}

/// Whether a pressure is far off a band.
fn is_off(held: &Held, low: Option<f64>, high: Option<f64>, rules: &Rules) -> bool {
    let tolerance = rules.number(NumberId::BandTolerance);
    let under = |low: f64| held.mmhg < low * (1.0 - tolerance) * (1.0 - SLACK);
    let over = |high: f64| held.mmhg > high * (1.0 + tolerance) * (1.0 + SLACK);
    (!held.is_bound && low.is_some_and(under)) || high.is_some_and(over)
}

/// Each of several pieces by itself against the class that it claims.
pub(super) fn pieces_off_band(what: &Garments<'_>, place: Place, rules: &Rules) -> Vec<Finding> {
    if what.outfit.pieces.len() < 2 {
        return Vec::new();
    }
    let numbers = EstimateRules::of(rules);
    let place = place.at(what.on.limb.reference());
    what.outfit
        .pieces
        .iter()
        .filter_map(|worn| {
            let Piece::Garment(garment) = &worn.piece else { return None };
            let band = claimed_band(garment.claim.as_ref())?;
            let alone = estimate(&what.on, &Outfit::of(worn.piece.clone()), &[], &numbers);
            let (mmhg, is_bound, text) = reference_words(&alone)?;
            let held = Held { mmhg, is_bound, said: format!("{} by itself: {text}", garment.label) };
            let claimed = format!("the claimed {}", garment.claim.as_ref().map(claim_printed)?);
            is_off(&held, band.low, band.high, rules)
                .then(|| finding::off_band::off_band(place, &held.said, &claimed))
        })
        .collect()
}
