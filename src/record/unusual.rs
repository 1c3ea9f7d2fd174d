//! Owns what is unusual in the girths of one limb: bands, ratios, neighbours, girths that no limb has.

use super::MarkPlace;
use super::girths::{GirthAt, Girths};
use super::mark::tenths_of;
use super::neighbours::{BesideNeighbours, SERIAL_MOST_CM, beside_neighbours, holds};
use crate::anatomy::Landmark;
use crate::quantity::Girth;
use crate::rules::{Basis, NumberId, PlausibleRatio, Rules};

/// One thing that is unusual; a question, never a refusal.
#[derive(Clone, Debug)]
pub enum Unusual {
    /// A girth above 200 cm.
    Large {
        /// Which mark.
        place: MarkPlace,
        /// Its girth.
        girth: Girth,
    },
    /// A girth outside the band of its landmark.
    Band {
        /// Which mark.
        place: MarkPlace,
        /// Its girth.
        girth: Girth,
        /// Lowest girth that raises no question, cm.
        low_cm: f64,
        /// Highest girth that raises no question, cm.
        high_cm: f64,
        /// What the band rests on.
        basis: Basis,
    },
    /// A ratio of two girths outside its band.
    Ratio {
        /// The band.
        band: PlausibleRatio,
        /// The ratio.
        ratio: f64,
    },
    /// A mark far from what its neighbours let expect.
    Neighbours(BesideNeighbours),
}

impl Unusual {
    /// The marks concerned by their landmarks; a serial mark has none.
    pub fn landmarks(&self) -> Vec<Landmark> {
        match self {
            Self::Large { place, .. } | Self::Band { place, .. } => place.landmark.into_iter().collect(),
            Self::Ratio { band, .. } => vec![band.to, band.of],
            Self::Neighbours(beside) => beside.place.landmark.into_iter().collect(),
        }
    }

    /// The one mark concerned; none for a ratio of two.
    pub fn place(&self) -> Option<MarkPlace> {
        match self {
            Self::Large { place, .. } | Self::Band { place, .. } => Some(*place),
            Self::Ratio { .. } => None,
            Self::Neighbours(beside) => Some(beside.place),
        }
    }
}

/// What is unusual in a limb. Adult bands are off for a child; `confirmed` marks are not asked about. What
/// one girth has caused is told once: beside a girth outside its band no ratio and no neighbour of it.
pub(super) fn unusual(
    girths: &Girths,
    confirmed: &[Landmark],
    is_adult: bool,
    rules: &Rules,
) -> Vec<Unusual> {
    let is_confirmed = |one: &GirthAt| match one.place.landmark {
        Some(landmark) => confirmed.contains(&landmark),
        None => one.is_repeated,
    };
    let mut all: Vec<Unusual> = girths
        .0
        .iter()
        .filter(|one| !is_confirmed(one))
        .filter_map(|one| of_girth(*one, is_adult, rules))
        .collect();
    if !is_adult {
        return all;
    }
    let alone: Vec<MarkPlace> = all.iter().filter_map(Unusual::place).collect();
    let is_alone = |landmark| alone.iter().any(|place| place.landmark == Some(landmark));
    all.extend(rules.ratios.iter().filter_map(|band| {
        let settled = confirmed.contains(&band.of) && confirmed.contains(&band.to);
        if settled || is_alone(band.of) || is_alone(band.to) {
            return None;
        }
        let ratio = girths.at(band.of)?.cm() / girths.at(band.to)?.cm();
        let outside = !holds(ratio, band.low, band.high);
        outside.then(|| Unusual::Ratio { band: band.clone(), ratio })
    }));
    if all.is_empty() {
        let far = beside_neighbours(girths, rules).into_iter().filter(|one| !one.holds());
        let open = far.filter(|beside| {
            girths.0.iter().find(|one| one.place == beside.place).is_some_and(|one| !is_confirmed(one))
        });
        all.extend(open.map(Unusual::Neighbours));
    }
    all
}

/// The girths of an adult that raise no question at a landmark, lowest and highest, cm, and what they rest on.
pub fn usual_girth(landmark: Landmark, rules: &Rules) -> (f64, f64, Basis) {
    match rules.plausible.iter().find(|band| band.landmark == landmark) {
        Some(band) => (band.low_cm, band.high_cm, band.basis),
        None => (
            rules.number(NumberId::OtherGirthLow),
            rules.number(NumberId::OtherGirthHigh),
            rules.number_basis(NumberId::OtherGirthHigh),
        ),
    }
}

fn of_girth(one: GirthAt, is_adult: bool, rules: &Rules) -> Option<Unusual> {
    let girth = Girth::from_tenths(one.tenths)?;
    if one.tenths > tenths_of(rules.number(NumberId::GirthAskedAbove)) {
        return Some(Unusual::Large { place: one.place, girth });
    }
    if !is_adult {
        return None;
    }
    let (low_cm, high_cm, basis) = match one.place.landmark {
        Some(landmark) => usual_girth(landmark, rules),
        None => (rules.number(NumberId::OtherGirthLow), SERIAL_MOST_CM, Basis::HouseRule),
    };
    let outside = !(low_cm..=high_cm).contains(&girth.cm());
    outside.then_some(Unusual::Band { place: one.place, girth, low_cm, high_cm, basis })
}
