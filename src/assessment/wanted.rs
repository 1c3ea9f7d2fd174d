//! Owns which pressure is wanted: what was prescribed, else what is claimed.

use crate::anatomy::Limb;
use crate::garment::{Claim, ClassBand, Schemes};
use crate::quantity::mmhg;
use crate::record::{Prescribed, Wanted};
use crate::words;

/// The pressure that was prescribed for a limb.
#[derive(Clone, Debug)]
pub struct WantedPressure {
    /// Low end, mmHg.
    pub low: Option<f64>,
    /// High end, mmHg; none = open.
    pub high: Option<f64>,
    /// The scheme's id and the class, where it was prescribed so.
    pub class: Option<(String, String)>,
    /// As printed: `class 2 of RAL-GZ 387/2 (23 to 32 mmHg)`.
    pub printed: String,
}

/// What a prescription comes to on a limb.
#[derive(Clone, Debug)]
pub enum PrescribedHere {
    /// No pressure was prescribed.
    None,
    /// It names a scheme for another limb, printed so; it counts as none.
    OtherLimb(String),
    /// A pressure.
    Pressure(WantedPressure),
}

impl PrescribedHere {
    /// What a prescription comes to on `limb`. A scheme or class that is not known has been a problem of the file.
    pub fn of(prescribed: Option<&Prescribed>, limb: Limb, schemes: &Schemes) -> Self {
        let Some(wanted) = prescribed.and_then(|one| one.wanted.as_ref()) else { return Self::None };
        match wanted {
            Wanted::Range { low, high } => {
                let (low, high) = (mmhg(*low), mmhg(*high));
                let printed = words::band(Some(low), Some(high), false, false);
                Self::Pressure(WantedPressure { low: Some(low), high: Some(high), class: None, printed })
            }
            Wanted::Class { scheme, class } => {
                let Some(found) = schemes.find(&scheme.text) else { return Self::None };
                if !found.limbs.include(limb) {
                    return Self::OtherLimb(found.label.clone());
                }
                let Some(band) = found.class(&class.text) else { return Self::None };
                Self::Pressure(WantedPressure {
                    low: band.low,
                    high: band.high,
                    class: Some((found.id.clone(), band.class.clone())),
                    printed: class_printed(&found.label, band),
                })
            }
        }
    }

    /// The pressure, if one counts.
    pub fn pressure(&self) -> Option<&WantedPressure> {
        match self {
            Self::Pressure(wanted) => Some(wanted),
            Self::None | Self::OtherLimb(_) => None,
        }
    }
}

/// `class 2 of RAL-GZ 387/2 (23 to 32 mmHg)`: the one way a class is printed.
pub fn class_printed(scheme: &str, band: &ClassBand) -> String {
    format!("class {} of {scheme} ({})", band.class, band.spoken())
}

/// The band of a claim.
pub fn claimed_band(claim: Option<&Claim>) -> Option<&ClassBand> {
    claim.and_then(|claim| claim.scheme.class(&claim.class))
}

/// A claim as printed.
pub fn claim_printed(claim: &Claim) -> String {
    claimed_band(Some(claim)).map_or_else(
        || format!("class {} of {}", claim.class, claim.scheme.label),
        |band| class_printed(&claim.scheme.label, band),
    )
}

/// Whether a claim is what was prescribed; none where one of the two says nothing.
pub(super) fn is_as_prescribed(claim: Option<&Claim>, wanted: &WantedPressure) -> Option<bool> {
    /// Ends closer than this are one (derived: unit conversion in the last binary places).
    const SAME: f64 = 1e-9;
    let claim = claim?;
    Some(match &wanted.class {
        Some((scheme, class)) => claim.scheme.id == *scheme && claim.class == *class,
        None => claimed_band(Some(claim)).is_some_and(|band| {
            let above = wanted.low.is_none_or(|low| band.low.is_some_and(|end| end >= low - SAME));
            let below = wanted.high.is_none_or(|high| band.high.is_some_and(|end| end <= high + SAME));
            above && below
        }),
    })
}
