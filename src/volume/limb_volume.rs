//! Owns the volume of one limb and the error that the tape gives it.

use std::f64::consts::PI;

/// A girth at a place, for volume.
#[derive(Clone, Copy, Debug)]
pub struct Station {
    /// Position along the limb, cm.
    pub at_cm: f64,
    /// Girth, cm, above 0.
    pub girth_cm: f64,
    /// Standard deviation of the girth, cm.
    pub sd_cm: f64,
}

/// A volume with the variance that independent tape errors give it.
#[derive(Clone, Copy, Debug)]
pub struct LimbVolume {
    /// mL.
    pub ml: f64,
    /// mL².
    pub variance: f64,
}

/// Cut cones between each two stations: V = h (C1² + C1 C2 + C2²) / 12π, mL. None for fewer than
/// two stations.
///
/// Source: Gohil 2018 (published); exact for a straight-sided limb (derived).
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
    Some(LimbVolume { ml, variance: variance(stations, &slopes) })
}

/// Discs around each station: V = Σ h C² / 4π, mL, h the common spacing. None where the spacing is
/// not the same throughout, or for fewer than two stations.
///
/// Source: Royal Marsden Manual, procedure 27.11 (published).
pub fn disc(stations: &[Station]) -> Option<LimbVolume> {
    let height = common_spacing(stations)?;
    let ml = stations.iter().map(|one| height * one.girth_cm * one.girth_cm / (4.0 * PI)).sum();
    let slopes: Vec<f64> = stations.iter().map(|one| height * one.girth_cm / (2.0 * PI)).collect();
    Some(LimbVolume { ml, variance: variance(stations, &slopes) })
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

fn variance(stations: &[Station], slopes: &[f64]) -> f64 {
    stations.iter().zip(slopes).map(|(one, slope)| (one.sd_cm * slope) * (one.sd_cm * slope)).sum()
}
