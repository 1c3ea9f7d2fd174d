//! Owns the scale of a curve that fits readings best, and how far readings spread about the estimate.

use super::{AgainstReading, chi_square_above};

/// Chance of so great a misfit below which no scale is given. House rule: 99.9 % of fair readings lie below.
const GROSS: f64 = 0.001;

/// Readings from which on a clinic's own spread replaces the published one. House rule.
pub const LEAST_READINGS: usize = 8;

/// Least spread between wearers that is taken, mmHg. House rule: a sensor does not tell less.
const LEAST_SPREAD: f64 = 1.0;

/// The scale of a fabric's curve that fits the readings best.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Calibration {
    /// Factor on the tension.
    pub factor: f64,
    /// Its SD, with the misfit.
    pub sd: f64,
    /// χ² of the readings about the scaled estimates.
    pub chi_square: f64,
    /// Marks that it rests on.
    pub marks: usize,
}

/// Why there is no scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NoCalibration {
    /// No mark has both a reading and an estimate above 0.
    NoMarks,
    /// The readings do not fit one scale: so great a misfit has the chance given.
    Misfit {
        /// χ² of the readings about the scaled estimates.
        chi_square: f64,
        /// The chance of as much.
        chance: f64,
    },
}

/// One scale by weighted least squares: k minimises Σ(R − kP)²/σ², σ² = SD of the reading² + SD by tape and
/// ruler²; k = ΣwPR/ΣwP², SD = 1/√ΣwP², times √(χ²/(n − 1)) where that is above 1 (derived).
///
/// # Errors
/// A [`NoCalibration`] where no mark has both, or the misfit is gross.
pub fn calibrate(rows: &[AgainstReading]) -> Result<Calibration, NoCalibration> {
    let weighted = || {
        rows.iter().filter(|row| row.estimate_mmhg > 0.0).map(|row| {
            let weight = 1.0 / (row.read.sd * row.read.sd + row.own_sd * row.own_sd);
            (weight, row.estimate_mmhg, row.read.mmhg)
        })
    };
    let (cross, square) =
        weighted().fold((0.0, 0.0), |(cross, square), (w, p, r)| (cross + w * p * r, square + w * p * p));
    if square <= 0.0 || cross <= 0.0 {
        return Err(NoCalibration::NoMarks);
    }
    let factor = cross / square;
    let chi_square: f64 = weighted().map(|(w, p, r)| w * (r - factor * p).powi(2)).sum();
    let marks = weighted().count();
    let freedom = u32::try_from(marks.saturating_sub(1)).unwrap_or(u32::MAX);
    let mut sd = 1.0 / square.sqrt();
    if freedom > 0 {
        let chance = chi_square_above(chi_square, freedom);
        if chance < GROSS {
            return Err(NoCalibration::Misfit { chi_square, chance });
        }
        sd *= (chi_square / f64::from(freedom)).sqrt().max(1.0);
    }
    Ok(Calibration { factor, sd, chi_square, marks })
}

/// How far a clinic's own readings spread about the estimates beyond tape, ruler and sensor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WornSpread {
    /// mmHg, to stand for the published one.
    pub sd_mmhg: f64,
    /// Readings that it rests on.
    pub count: usize,
}

/// The spread of readings about the estimates: √(mean (R − P)² − mean of both variances), at least
/// the least that is taken; none with fewer than eight (derived). A common misfit counts in full: what one curve
/// gets wrong for all, it gets wrong for the next wearer.
pub fn worn_spread(rows: &[AgainstReading]) -> Option<WornSpread> {
    if rows.len() < LEAST_READINGS {
        return None;
    }
    let count = f64::from(u32::try_from(rows.len()).ok()?);
    let excess = rows.iter().map(|row| {
        let known = row.read.sd * row.read.sd + row.own_sd * row.own_sd;
        (row.read.mmhg - row.estimate_mmhg).powi(2) - known
    });
    let variance = (excess.sum::<f64>() / count).max(0.0);
    Some(WornSpread { sd_mmhg: variance.sqrt().max(LEAST_SPREAD), count: rows.len() })
}
