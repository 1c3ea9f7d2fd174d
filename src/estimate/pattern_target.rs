//! Owns what a garment is to press: the pressure wanted at each landmark.

use super::{NoPattern, OnLimb};
use crate::anatomy::Landmark;
use crate::garment::{Claim, ClassBand};

/// Share of the mark below that a mark has at most. House rule: a target never stands level.
const FALLING: f64 = 0.95;

/// How much of the reference's pressure is wanted along the limb.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WantedFall {
    /// From 100 % at the reference to this share at the top, per cent.
    To(f64),
    /// To the middle of the scheme's limits at the top, kept within its limits between.
    Scheme,
}

/// The pressure that is wanted.
#[derive(Clone, Debug, PartialEq)]
pub enum Target {
    /// At the reference, mmHg, and the fall from it.
    Reference(f64, WantedFall),
    /// The middle of the claimed class's band, and the fall from it.
    Class(WantedFall),
    /// At each landmark, mmHg.
    List(Vec<(Landmark, f64)>),
}

/// One landmark of the pattern before its pressure is settled.
#[derive(Clone, Copy, Debug)]
pub(super) struct Place {
    /// Where.
    pub landmark: Landmark,
    /// Where along the limb, cm.
    pub at_cm: f64,
    /// Limits of its share of the reference's pressure, per cent, where they bind.
    pub limits: Option<(f64, f64)>,
}

/// The whole of what is wanted.
#[derive(Clone, Debug)]
pub(super) enum Asked {
    /// Each landmark's pressure, mmHg.
    Fixed(Vec<(Landmark, f64)>),
    /// A fall from the reference, mmHg, to a share at the top, per cent.
    Fall {
        /// At the reference, mmHg.
        level: f64,
        /// At the top, per cent of it.
        top: f64,
        /// Every landmark, distal to proximal, the reference first.
        places: Vec<Place>,
    },
}

/// Settles a target on a limb.
pub(super) fn settle(
    on: &OnLimb<'_>,
    target: &Target,
    claim: Option<&Claim>,
    to: Option<Landmark>,
) -> Result<Asked, NoPattern> {
    let (level, fall) = match target {
        Target::List(list) => return fixed(on, list),
        Target::Reference(level, fall) => (*level, *fall),
        Target::Class(fall) => (middle(claim)?, *fall),
    };
    let reference = on.limb.reference();
    let limits = |landmark: Landmark| {
        let claim = claim?;
        let limit = claim.scheme.limit(&claim.class, landmark).filter(|limit| limit.of == reference)?;
        Some((limit.low.unwrap_or(0.0), limit.high.unwrap_or(100.0)))
    };
    let binding = fall == WantedFall::Scheme;
    let places: Vec<Place> = on
        .named()
        .filter(|(landmark, _)| *landmark >= reference && to.is_none_or(|to| *landmark <= to))
        .map(|(landmark, mark)| Place {
            landmark,
            at_cm: mark.at.cm(),
            limits: limits(landmark).filter(|_| binding),
        })
        .collect();
    let (Some(first), Some(last)) = (places.first(), places.last()) else { return Err(NoPattern::TooFew) };
    if let Some(to) = to.filter(|to| *to != last.landmark) {
        return Err(NoPattern::NotMeasured(to));
    }
    if first.landmark != reference {
        return Err(NoPattern::NotMeasured(reference));
    }
    if places.len() < 2 {
        return Err(NoPattern::TooFew);
    }
    let top = match fall {
        WantedFall::To(percent) => percent,
        WantedFall::Scheme => limits(last.landmark)
            .map(|(low, high)| f64::midpoint(low, high))
            .ok_or(NoPattern::NoShare(last.landmark))?,
    };
    Ok(Asked::Fall { level, top, places })
}

fn fixed(on: &OnLimb<'_>, list: &[(Landmark, f64)]) -> Result<Asked, NoPattern> {
    if let Some((missing, _)) = list.iter().find(|(landmark, _)| on.mark(*landmark).is_none()) {
        return Err(NoPattern::NotMeasured(*missing));
    }
    let mut list = list.to_vec();
    list.sort_by_key(|(landmark, _)| *landmark);
    if let Some((twice, _)) =
        list.iter().zip(list.iter().skip(1)).find(|(one, next)| one.0 == next.0).map(|(one, _)| one)
    {
        return Err(NoPattern::Twice(*twice));
    }
    if list.len() < 2 { Err(NoPattern::TooFew) } else { Ok(Asked::Fixed(list)) }
}

/// The middle of the claimed class's band, mmHg.
fn middle(claim: Option<&Claim>) -> Result<f64, NoPattern> {
    let claim = claim.ok_or(NoPattern::NoClass)?;
    match claim.scheme.class(&claim.class) {
        Some(ClassBand { low: Some(low), high: Some(high), .. }) => Ok(f64::midpoint(*low, *high)),
        _ => Err(NoPattern::OpenClass(claim.class.clone())),
    }
}

/// Shares of the reference's pressure, per cent, one for each place: `even` 0 is straight in position, 1 the
/// same ratio from mark to mark, between them a blend in the logarithm. Kept inside the limits by `room`
/// (per cent, one for each place) where there is room, else in their middle, and falling from mark to mark.
pub(super) fn shares(places: &[Place], top: f64, even: f64, room: &[f64]) -> Vec<f64> {
    let (Some(first), Some(last)) = (places.first(), places.last()) else { return Vec::new() };
    let length = last.at_cm - first.at_cm;
    let steps = f64::from(u32::try_from(places.len().saturating_sub(1)).unwrap_or(1)).max(1.0);
    let mut before = 100.0_f64;
    let mut found = Vec::new();
    for (number, place) in places.iter().enumerate() {
        let along = if length > 0.0 { (place.at_cm - first.at_cm) / length } else { 0.0 };
        let straight = 1.0 + (top / 100.0 - 1.0) * along;
        let step = f64::from(u32::try_from(number).unwrap_or_default()) / steps;
        let alike = (top / 100.0).ln() * step;
        let wanted = 100.0 * ((1.0 - even) * straight.ln() + even * alike).exp();
        let room = room.get(number).copied().unwrap_or_default();
        let kept = match place.limits {
            Some((low, high)) if number > 0 => {
                let (from, upto) = (low + room, high - room);
                if from <= upto { wanted.clamp(from, upto) } else { f64::midpoint(low, high) }
            }
            _ => wanted,
        };
        // Each mark falls below the one before it, as far as its limits let it.
        let floor = place.limits.map_or(0.0, |(low, high)| {
            let inside = low + room;
            if inside <= high - room { inside.min(before) } else { low.min(before) }
        });
        before = if number == 0 { kept } else { kept.min((before * FALLING).max(floor)) };
        found.push(before);
    }
    found
}
