//! Owns the marks without survey data: how far they may lie from what their neighbours let expect.
//!
//! Source: plausibility of landmarks that no survey measured is a house rule (0.6 to 1.6 of the mean of the
//! two neighbours, wider where the anatomy asks it; 11 to 75 cm).

use super::MarkPlace;
use super::girths::{GirthAt, Girths};
use crate::anatomy::Landmark;
use crate::rules::Rules;

/// Highest girth of a serial mark that raises no question, cm: that of any landmark. Basis: house rule.
pub(super) const SERIAL_MOST_CM: f64 = 110.0;

/// Share of the mean of its neighbours that a mark may have. Basis: house rule.
const BETWEEN: (f64, f64) = (0.6, 1.6);

/// The same for the instep, whose girth runs round the heel. Basis: house rule.
const INSTEP: (f64, f64) = (0.9, 2.2);

/// The same for hand and forefoot, which have a neighbour on one side alone, wider than the wrist and
/// narrower than the instep. Basis: house rule.
const HAND: (f64, f64) = (0.6, 2.0);
const FOREFOOT: (f64, f64) = (0.45, 1.8);

/// The same where the nearest mark is no neighbour in the list of landmarks. Basis: house rule.
const FAR: (f64, f64) = (0.35, 2.6);

/// A mark against its neighbours.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BesideNeighbours {
    /// Which mark.
    pub place: MarkPlace,
    /// Its girth over the mean of its neighbours.
    pub ratio: f64,
    /// Lowest ratio that raises no question.
    pub low: f64,
    /// Highest ratio that raises no question.
    pub high: f64,
}

impl BesideNeighbours {
    /// Whether it raises no question.
    pub fn holds(&self) -> bool {
        holds(self.ratio, self.low, self.high)
    }

    /// How far the girth lies from what the neighbours let expect, in SD (house rule: the band spans four).
    pub(super) fn away(&self) -> f64 {
        let (low, high) = (self.low.ln(), self.high.ln());
        4.0 * (self.ratio.ln() - f64::midpoint(low, high)) / (high - low)
    }
}

/// Whether a ratio lies in a closed band; on its end it does, whatever the last bit of a division says
/// (house rule: 1e-9 relative, far below a tenth of a millimetre).
pub(super) fn holds(ratio: f64, low: f64, high: f64) -> bool {
    const LAST_BIT: f64 = 1e-9;
    ratio >= low * (1.0 - LAST_BIT) && ratio <= high * (1.0 + LAST_BIT)
}

/// Whether the rules have survey data of a landmark.
pub(super) fn is_surveyed(landmark: Landmark, rules: &Rules) -> bool {
    rules.plausible.iter().any(|band| band.landmark == landmark)
}

/// Every mark without survey data against its neighbours; ends of the limb against their one neighbour.
pub(super) fn beside_neighbours(girths: &Girths, rules: &Rules) -> Vec<BesideNeighbours> {
    let named: Vec<GirthAt> = girths.0.iter().filter(|one| one.place.landmark.is_some()).copied().collect();
    let of_named = named.iter().enumerate().filter_map(|(at, one)| {
        let landmark = one.place.landmark.filter(|landmark| !is_surveyed(*landmark, rules))?;
        let below = at.checked_sub(1).and_then(|at| named.get(at));
        let above = named.get(at + 1);
        let (low, high) = limits(landmark, below, above);
        beside(*one, below, above, (low, high))
    });
    let serial = girths.0.iter().enumerate().filter_map(|(at, one)| {
        one.place.landmark.is_none().then_some(())?;
        let below = at.checked_sub(1).and_then(|at| girths.0.get(at));
        let above = girths.0.get(at + 1);
        beside(*one, below, above, if below.is_some() && above.is_some() { BETWEEN } else { FAR })
    });
    of_named.chain(serial).collect()
}

fn limits(landmark: Landmark, below: Option<&GirthAt>, above: Option<&GirthAt>) -> (f64, f64) {
    let name = |one: Option<&GirthAt>| one.and_then(|one| one.place.landmark);
    let (below, above) = (name(below), name(above));
    let is_next = below.is_none_or(|below| landmark.below() == Some(below))
        && above.is_none_or(|above| above.below() == Some(landmark));
    match landmark {
        Landmark::Hand if above <= Some(Landmark::Wrist) => HAND,
        Landmark::Forefoot if above <= Some(Landmark::Ankle) => FOREFOOT,
        Landmark::Instep if below.is_some() && above.is_some() => INSTEP,
        _ if below.is_some() && above.is_some() || is_next => BETWEEN,
        _ => FAR,
    }
}

fn beside(
    one: GirthAt,
    below: Option<&GirthAt>,
    above: Option<&GirthAt>,
    (low, high): (f64, f64),
) -> Option<BesideNeighbours> {
    let mean = match (below, above) {
        (Some(below), Some(above)) => f64::midpoint(below.cm(), above.cm()),
        (Some(only), None) | (None, Some(only)) => only.cm(),
        (None, None) => return None,
    };
    (mean > 0.0).then(|| BesideNeighbours { place: one.place, ratio: one.cm() / mean, low, high })
}
