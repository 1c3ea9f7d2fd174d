//! Owns the volume of a row of stations and the error that the tape gives it.
//!
//! Source: cut cones, Gohil 2018, Indian J Vasc Endovasc Surg 5:259 (published), exact for a
//! straight-sided limb (derived); discs, Royal Marsden Manual, procedure 27.11 (published); the
//! gradients are worked out from both (derived).

use std::f64::consts::PI;

use super::Station;
use crate::record::VolumeMethod;

/// A volume, with the error that the tape gives it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct LimbVolume {
    /// mL.
    pub ml: f64,
    /// Variance where the tape errs at each mark for itself, mL².
    pub variance: f64,
    /// SD where the tape errs alike at all marks (one that is pulled too tight), mL.
    pub shared_sd_ml: f64,
}

impl LimbVolume {
    /// SD where the tape errs at each mark for itself, mL.
    pub fn sd_ml(self) -> f64 {
        self.variance.sqrt()
    }

    fn of(ml: f64, stations: &[Station], slopes: &[f64]) -> Self {
        let errors = || stations.iter().zip(slopes).map(|(one, slope)| one.sd_cm * slope);
        Self { ml, variance: errors().map(|error| error * error).sum(), shared_sd_ml: errors().sum() }
    }
}

/// The volume of `stations` by `method`; see [`frustum`] and [`disc`].
pub fn volume_of(method: VolumeMethod, stations: &[Station]) -> Option<LimbVolume> {
    match method {
        VolumeMethod::Frustum => frustum(stations),
        VolumeMethod::Disc => disc(stations),
    }
}

/// Cut cones between each two stations, at any spacing: V = h (C1² + C1 C2 + C2²) / 12π, mL. None for
/// fewer than two stations.
pub fn frustum(stations: &[Station]) -> Option<LimbVolume> {
    if stations.len() < 2 {
        return None;
    }
    let mut ml = 0.0;
    let mut slopes = vec![0.0; stations.len()];
    for (number, pair) in stations.windows(2).enumerate() {
        let [low, high] = pair else { continue };
        let height = high.at_cm - low.at_cm;
        let (c1, c2) = (low.girth_cm, high.girth_cm);
        ml += height * (c1 * c1 + c1 * c2 + c2 * c2) / (12.0 * PI);
        let gains = [height * (2.0 * c1 + c2) / (12.0 * PI), height * (2.0 * c2 + c1) / (12.0 * PI)];
        for (slope, gain) in slopes.iter_mut().skip(number).zip(gains) {
            *slope += gain;
        }
    }
    Some(LimbVolume::of(ml, stations, &slopes))
}

/// Discs around each station: V = Σ h C² / 4π, mL, h the common spacing. None where the spacing is
/// not the same throughout, for then no station is the middle of its disc; none for fewer than two.
pub fn disc(stations: &[Station]) -> Option<LimbVolume> {
    let height = common_spacing(stations)?;
    let whole = vec![1.0; stations.len()];
    Some(discs(height, stations, &whole))
}

/// Discs of the common spacing `height`, of which only a share each is counted (a disc that a joint
/// cuts in two).
pub(super) fn discs(height: f64, stations: &[Station], shares: &[f64]) -> LimbVolume {
    let pairs = || stations.iter().zip(shares);
    let ml = pairs().map(|(one, share)| share * height * one.girth_cm * one.girth_cm / (4.0 * PI)).sum();
    let slopes: Vec<f64> = pairs().map(|(one, share)| share * height * one.girth_cm / (2.0 * PI)).collect();
    LimbVolume::of(ml, stations, &slopes)
}

/// The spacing of the stations where it is the same throughout, to 0.1 mm; cm.
pub(super) fn common_spacing(stations: &[Station]) -> Option<f64> {
    let mut spacing = None;
    for pair in stations.windows(2) {
        let [low, high] = pair else { continue };
        let here = high.at_cm - low.at_cm;
        match spacing {
            None => spacing = Some(here),
            // Positions are whole tenths of a millimetre; half of one absorbs the floating point only.
            Some(first) if f64::abs(here - first) < 0.005 => {}
            Some(_) => return None,
        }
    }
    spacing
}
