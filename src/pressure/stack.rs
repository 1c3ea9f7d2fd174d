//! Owns several garments on one place.

use super::{Estimate, Pressed, Spread};
use crate::quantity::{mmhg, newton_per_metre, pressure_from_mmhg, tension_from_newton_per_metre};

/// One garment on a place with the fabric it is made of.
#[derive(Clone, Copy, Debug)]
pub struct Stacked {
    /// Its own estimate.
    pub estimate: Estimate,
    /// Which fabric, by number: one fabric's error is common to all garments of it.
    pub fabric: usize,
}

/// The plain sum of garments over one another: an upper estimate.
///
/// The girth is one, so its terms add by slope; relaxed girths are independent; the terms of one
/// fabric add, those of several add in quadrature (derived). One that does not touch adds nothing; one
/// beyond its curve leaves a lower bound.
pub fn stack(all: &[Stacked], girth_sd_cm: f64) -> Estimate {
    if let [one] = all {
        return one.estimate;
    }
    if all.iter().any(|one| one.estimate.bound().is_some()) {
        let bound = all.iter().map(|one| mmhg(one.estimate.at_least())).sum();
        return Estimate::Beyond { bound: pressure_from_mmhg(bound) };
    }
    let pressed: Vec<(Pressed, usize)> = all
        .iter()
        .filter_map(|one| match one.estimate {
            Estimate::Pressed(pressed) => Some((pressed, one.fabric)),
            Estimate::Slack | Estimate::Beyond { .. } => None,
        })
        .collect();
    if pressed.is_empty() {
        return Estimate::Slack;
    }
    let sum = |of: fn(&Pressed) -> f64| pressed.iter().map(|(one, _)| of(one)).sum::<f64>();
    let per_girth = sum(|one| one.per_girth);
    let sd_relaxed = sum(|one| one.sd_relaxed * one.sd_relaxed).sqrt();
    let mut fabrics: Vec<(usize, f64)> = Vec::new();
    for (one, fabric) in &pressed {
        match fabrics.iter_mut().find(|(other, _)| other == fabric) {
            Some((_, total)) => *total += one.sd_fabric,
            None => fabrics.push((*fabric, one.sd_fabric)),
        }
    }
    Estimate::Pressed(Pressed {
        tension: tension_from_newton_per_metre(sum(|one| newton_per_metre(one.tension))),
        pressure: pressure_from_mmhg(sum(|one| mmhg(one.pressure))),
        per_girth,
        per_relaxed: sum(|one| one.per_relaxed),
        sd_own: (girth_sd_cm * per_girth).hypot(sd_relaxed),
        sd_relaxed,
        sd_fabric: fabrics.iter().map(|(_, sd)| sd * sd).sum::<f64>().sqrt(),
    })
}

impl Spread {
    /// No error at all, for figures that are drawn and not judged.
    pub const NONE: Self = Self { girth_cm: 0.0, relaxed_cm: 0.0, tension: 0.0 };
}
