//! Owns the questions that unusual girths raise.

use super::slip::Slip;
use super::slips::{Girths, slips};
use super::{Affected, AgeBand, Mark, Record};
use crate::anatomy::Landmark;
use crate::rules::{NumberId, PlausibleBand, PlausibleRatio, Rules};

/// Which limb of the record a question is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WhichLimb {
    /// The one measured for the garment.
    Measured,
    /// The other one.
    Other,
}

/// What is unusual.
#[derive(Clone, Debug)]
pub enum Unusual {
    /// Girths outside their bands; tenths of a millimetre.
    Girths(Vec<(PlausibleBand, i64)>),
    /// Ratios outside their bands.
    Ratios(Vec<(PlausibleRatio, f64)>),
    /// The affected limb is thinner than the other one: landmark, affected and other girth, tenths of
    /// a millimetre.
    Thinner(Vec<(Landmark, i64, i64)>),
}

/// A question to the user; never a refusal. What one slip may have caused is one question.
#[derive(Clone, Debug)]
pub struct Question {
    /// About which limb.
    pub limb: WhichLimb,
    /// What is unusual.
    pub unusual: Unusual,
    /// Probable slips, nearest to the usual limb first; never applied.
    pub slips: Vec<Slip>,
}

impl Question {
    /// The landmarks that would have to be confirmed, distal to proximal.
    pub fn landmarks(&self) -> Vec<Landmark> {
        let mut all: Vec<Landmark> = match &self.unusual {
            Unusual::Girths(all) => all.iter().map(|(band, _)| band.landmark).collect(),
            Unusual::Ratios(all) => all.iter().flat_map(|(band, _)| [band.to, band.of]).collect(),
            Unusual::Thinner(all) => all.iter().map(|(landmark, _, _)| *landmark).collect(),
        };
        all.sort_unstable();
        all.dedup();
        all
    }
}

/// The questions that the girths raise and the record does not answer with `confirmed`; none for a child.
pub fn questions(record: &Record, rules: &Rules) -> Vec<Question> {
    if record.age_band == AgeBand::Child {
        return Vec::new();
    }
    let mut all = of_limb(&record.marks, WhichLimb::Measured, &record.confirmed, rules);
    if let Some(other) = &record.other_limb {
        all.extend(of_limb(other, WhichLimb::Other, &record.confirmed, rules));
    }
    let asked: Vec<Landmark> = all.iter().flat_map(Question::landmarks).collect();
    all.extend(of_sides(record, &asked, rules));
    all
}

fn of_limb(marks: &[Mark], limb: WhichLimb, confirmed: &[Landmark], rules: &Rules) -> Vec<Question> {
    let girths: Girths = marks.iter().map(|mark| (mark.landmark, mark.girth().tenths())).collect();
    let girth = |landmark| marks.iter().find(|mark| mark.landmark == Some(landmark)).map(Mark::girth);
    let outside: Vec<(PlausibleBand, i64)> = rules
        .plausible
        .iter()
        .filter(|band| !confirmed.contains(&band.landmark))
        .filter_map(|band| Some((band.clone(), girth(band.landmark)?)))
        .filter(|(band, girth)| !(band.low_cm..=band.high_cm).contains(&girth.cm()))
        .map(|(band, girth)| (band, girth.tenths()))
        .collect();
    let asked = |landmark| outside.iter().any(|(band, _)| band.landmark == landmark);
    let ratios: Vec<(PlausibleRatio, f64)> = rules
        .ratios
        .iter()
        .filter(|band| !(confirmed.contains(&band.of) && confirmed.contains(&band.to)))
        // One cause, one question: a girth already asked about is not asked about again as a ratio.
        .filter(|band| !asked(band.of) && !asked(band.to))
        .filter_map(|band| Some((band.clone(), girth(band.of)?.cm() / girth(band.to)?.cm())))
        .filter(|(band, ratio)| !(band.low..=band.high).contains(ratio))
        .collect();
    let mut all = Vec::new();
    if !outside.is_empty() {
        let slips = slips(&girths, confirmed, rules);
        all.push(Question { limb, unusual: Unusual::Girths(outside), slips });
    }
    if !ratios.is_empty() {
        let slips = if all.is_empty() { slips(&girths, confirmed, rules) } else { Vec::new() };
        all.push(Question { limb, unusual: Unusual::Ratios(ratios), slips });
    }
    all
}

/// Marks at which the affected limb is thinner than the other one by the share that the rules name.
fn of_sides(record: &Record, asked: &[Landmark], rules: &Rules) -> Option<Question> {
    let Affected::One(affected) = record.affected else { return None };
    let other = record.other_limb.as_ref()?;
    let share = rules.number(NumberId::ThinnerSide);
    let thinner: Vec<(Landmark, i64, i64)> = record
        .marks
        .iter()
        .filter_map(|mark| {
            let landmark =
                mark.landmark.filter(|one| !asked.contains(one) && !record.confirmed.contains(one))?;
            let other = other.iter().find(|one| one.landmark == Some(landmark))?;
            let (affected, other) = if affected == record.side { (mark, other) } else { (other, mark) };
            let thin = affected.girth().cm() <= other.girth().cm() * (1.0 - share) + 1e-9;
            thin.then(|| (landmark, affected.girth().tenths(), other.girth().tenths()))
        })
        .collect();
    (!thinner.is_empty()).then(|| Question {
        limb: if affected == record.side { WhichLimb::Measured } else { WhichLimb::Other },
        unusual: Unusual::Thinner(thinner),
        slips: Vec::new(),
    })
}
