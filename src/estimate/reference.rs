//! Owns the estimate at the reference and its class.

use super::MarkEstimate;
use crate::anatomy::{Landmark, Limb};
use crate::garment::{Claim, ClassBand, ClassPlace};
use crate::quantity::phi;

/// The estimate at the reference.
#[derive(Clone, Debug)]
pub struct ReferenceEstimate {
    /// Wrist or ankle, or what the scheme names.
    pub landmark: Landmark,
    /// mmHg; none where nothing is estimated.
    pub mmhg: Option<f64>,
    /// The least it can be beyond the curve's end, mmHg.
    pub bound_mmhg: Option<f64>,
    /// Where it lies among the classes of the claimed scheme.
    pub class: Option<ClassPlace>,
    /// The claimed scheme's id.
    pub scheme: Option<String>,
    /// The claimed class.
    pub claimed: Option<String>,
    /// Chance of the claimed class by tape, ruler and fabric.
    pub claimed_chance: Option<f64>,
    /// The same with the spread between wearers and against a sensor.
    pub claimed_chance_worn: Option<f64>,
    /// Change of pressure with girth, mmHg per cm.
    pub stiffness: Option<f64>,
}

/// The chance that a pressure lies in a band.
fn chance_of(band: &ClassBand, mmhg: f64, sd: f64) -> f64 {
    if sd > 0.0 {
        let upto = band.high.map_or(1.0, |high| phi((high - mmhg) / sd));
        let from = band.low.map_or(0.0, |low| phi((low - mmhg) / sd));
        upto - from
    } else {
        f64::from(u8::from(band.holds(mmhg)))
    }
}

/// The reference of marks under a claim.
pub(super) fn reference(limb: Limb, marks: &[MarkEstimate], claim: Option<&Claim>) -> ReferenceEstimate {
    let landmark = claim.and_then(|claim| claim.scheme.reference).unwrap_or(limb.reference());
    let mark = marks.iter().find(|mark| mark.landmark == landmark);
    let mmhg = mark.and_then(MarkEstimate::mmhg);
    let band = claim.and_then(|claim| claim.scheme.class(&claim.class));
    let chance = |sd: Option<f64>| {
        let (band, mmhg) = (band?, mmhg?);
        // Without contact there is no error to speak of: the class holds or not.
        Some(chance_of(band, mmhg, sd.unwrap_or(0.0)))
    };
    ReferenceEstimate {
        landmark,
        mmhg,
        bound_mmhg: mark.and_then(MarkEstimate::bound_mmhg),
        class: mmhg.zip(claim).and_then(|(mmhg, claim)| claim.scheme.place_of(mmhg, Some(&claim.class))),
        scheme: claim.map(|claim| claim.scheme.id.clone()),
        claimed: claim.map(|claim| claim.class.clone()),
        claimed_chance: chance(mark.and_then(MarkEstimate::sd_mmhg)),
        claimed_chance_worn: chance(mark.and_then(MarkEstimate::sd_worn_mmhg)),
        stiffness: mark.and_then(MarkEstimate::stiffness),
    }
}
