//! Owns sensor readings: as a garment's pressures along the limb, and against the estimate.

use super::worn::{MarkEstimate, ReadAt, WornEstimate, compare};
use crate::anatomy::Landmark;
use crate::garment::Claim;
use crate::graduation::{Graduation, GraduationBasis, Point, Shares, Value};
use crate::quantity::mmhg;
use crate::record::{Reading, Record};
use crate::rules::{NumberId, Rules};

/// The readings of the garment with one of these names; those without a name count when `unnamed` is set.
pub(super) fn readings_of<'r>(record: &'r Record, names: &[String], unnamed: bool) -> Vec<&'r Reading> {
    let ours = |reading: &&Reading| match &reading.garment {
        Some(name) => names.contains(name),
        None => unnamed,
    };
    record.readings.iter().filter(ours).collect()
}

/// The readings as pressures along the limb: the mean at each measured mark, the SD of one reading
/// over √n.
pub fn estimate_readings(
    record: &Record,
    readings: &[&Reading],
    claim: Option<&Claim>,
    to: Option<Landmark>,
    rules: &Rules,
) -> WornEstimate {
    let mut marks = Vec::new();
    let mut points = Vec::new();
    for mark in &record.marks {
        let Some(landmark) = mark.landmark else { continue };
        let here: Vec<&&Reading> = readings.iter().filter(|one| one.landmark == landmark).collect();
        if here.is_empty() {
            continue;
        }
        let count = f64::from(u32::try_from(here.len()).unwrap_or(1));
        let mean = here.iter().map(|one| mmhg(one.pressure)).sum::<f64>() / count;
        let one_sd = |reading: &Reading| reading.sd.map_or(rules.number(NumberId::ReadingSd), mmhg);
        let sd = here.iter().map(|one| one_sd(one).powi(2)).sum::<f64>().sqrt() / count;
        points.push(Point {
            landmark,
            at: mark.at,
            value: Value::Pressure { mmhg: mean, sd, fabrics: Shares::default() },
        });
        marks.push(MarkEstimate {
            landmark,
            at: mark.at,
            girth: mark.girth(),
            relaxed: None,
            stretch: None,
            estimate: None,
            read: Some(ReadAt { mmhg: mean, sd, count: here.len() }),
            pieces: Vec::new(),
        });
    }
    let to = to.or(marks.last().map(|mark| mark.landmark)).unwrap_or(record.limb.reference());
    let basis = (!marks.is_empty()).then_some(GraduationBasis::Readings);
    compare(record.limb, basis, marks, points, claim, to, rules)
}

/// Whether readings, rather than the estimate, give the verdict: they judge the whole fall, or they
/// show a rise, or there is no estimate of the fall.
pub(super) fn readings_decide(read: &WornEstimate, estimate: Option<&Graduation>) -> bool {
    use crate::graduation::Grade::{Certain, Likely};
    let Some(graduation) = &read.graduation else { return false };
    graduation.judged || estimate.is_none() || matches!(graduation.verdict, Some(Certain | Likely))
}

/// Estimate and reading at one mark.
#[derive(Clone, Copy, Debug)]
pub struct AgainstRow {
    /// Where.
    pub landmark: Landmark,
    /// The estimate, mmHg.
    pub estimate: f64,
    /// Its SD, mmHg.
    pub estimate_sd: f64,
    /// The reading, mmHg.
    pub reading: f64,
    /// Its SD, mmHg.
    pub reading_sd: f64,
}

/// The scale of a fabric's curve that fits the readings best.
#[derive(Clone, Copy, Debug)]
pub struct Scale {
    /// Factor on the tension.
    pub factor: f64,
    /// Its SD.
    pub sd: f64,
}

/// Estimates held against readings.
#[derive(Clone, Debug)]
pub struct Against {
    /// The marks with both.
    pub rows: Vec<AgainstRow>,
    /// Mean of estimate minus reading, mmHg.
    pub bias: f64,
    /// SD of estimate minus reading, mmHg; none with one mark.
    pub spread: Option<f64>,
    /// The scale that fits best; none without a contact.
    pub scale: Option<Scale>,
}

/// Holds estimates against readings; none where no mark has both.
///
/// The scale k minimises Σ(R − kP)²/σ², σ² = reading SD² + tape-and-ruler SD²:
/// k = ΣwPR/ΣwP², SD = 1/√ΣwP², w = 1/σ² (derived).
pub fn against(estimate: &WornEstimate, read: &WornEstimate) -> Option<Against> {
    let mut rows = Vec::new();
    let (mut cross, mut square) = (0.0, 0.0);
    for mark in &read.marks {
        let found = estimate.marks.iter().find(|one| one.landmark == mark.landmark);
        let (Some(found), Some(read)) = (found, mark.read) else { continue };
        let (Some(here), Some(sd)) = (found.mmhg(), found.sd()) else { continue };
        let own = found.estimate.map_or(0.0, |one| one.sd_own());
        let variance = read.sd * read.sd + own * own;
        if variance > 0.0 {
            cross += here * read.mmhg / variance;
            square += here * here / variance;
        }
        rows.push(AgainstRow {
            landmark: mark.landmark,
            estimate: here,
            estimate_sd: sd,
            reading: read.mmhg,
            reading_sd: read.sd,
        });
    }
    if rows.is_empty() {
        return None;
    }
    let count = f64::from(u32::try_from(rows.len()).unwrap_or(1));
    let gap = |row: &AgainstRow| row.estimate - row.reading;
    let bias = rows.iter().map(gap).sum::<f64>() / count;
    let spread = (rows.len() > 1)
        .then(|| (rows.iter().map(|row| (gap(row) - bias).powi(2)).sum::<f64>() / (count - 1.0)).sqrt());
    let scale = (square > 0.0).then(|| Scale { factor: cross / square, sd: 1.0 / square.sqrt() });
    Some(Against { rows, bias, spread, scale })
}
