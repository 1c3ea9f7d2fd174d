//! Owns the questions that unusual girths raise.

use super::{AgeBand, Mark, Record};
use crate::anatomy::Landmark;
use crate::rules::{PlausibleBand, PlausibleRatio, Rules};

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
    /// A girth outside its band; tenths of a millimetre.
    Girth(PlausibleBand, i64),
    /// A ratio outside its band.
    Ratio(PlausibleRatio, f64),
}

/// A question to the user; never a refusal.
#[derive(Clone, Debug)]
pub struct Question {
    /// About which limb.
    pub limb: WhichLimb,
    /// What is unusual.
    pub unusual: Unusual,
    /// Probable slips, nearest to the usual limb first, in words; never applied.
    pub slips: Vec<String>,
}

impl Question {
    /// The landmarks that would have to be confirmed.
    pub fn landmarks(&self) -> Vec<Landmark> {
        match &self.unusual {
            Unusual::Girth(band, _) => vec![band.landmark],
            Unusual::Ratio(band, _) => vec![band.to, band.of],
        }
    }
}

/// The questions that the girths raise and the record does not answer with `confirmed`; none for a child.
pub fn questions(record: &Record, rules: &Rules) -> Vec<Question> {
    if record.age_band == AgeBand::Child {
        return Vec::new();
    }
    let mut all = of_limb(&record.marks, WhichLimb::Measured, rules);
    if let Some(other) = &record.other_limb {
        all.extend(of_limb(other, WhichLimb::Other, rules));
    }
    all.retain(|question| !question.landmarks().iter().all(|one| record.confirmed.contains(one)));
    all
}

fn of_limb(marks: &[Mark], limb: WhichLimb, rules: &Rules) -> Vec<Question> {
    let girth = |landmark| marks.iter().find(|mark| mark.landmark == Some(landmark)).map(Mark::girth);
    let mut all = Vec::new();
    for band in &rules.plausible {
        if let Some(girth) = girth(band.landmark)
            && !(band.low_cm..=band.high_cm).contains(&girth.cm())
        {
            all.push(Question {
                limb,
                unusual: Unusual::Girth(band.clone(), girth.tenths()),
                slips: Vec::new(),
            });
        }
    }
    for band in &rules.ratios {
        let Some((of, to)) = girth(band.of).zip(girth(band.to)) else { continue };
        let ratio = of.cm() / to.cm();
        // One cause, one question: a girth already asked about is not asked about again as a ratio.
        let asked = all.iter().any(|question: &Question| {
            question.landmarks().iter().any(|one| *one == band.of || *one == band.to)
        });
        if !(band.low..=band.high).contains(&ratio) && !asked {
            all.push(Question { limb, unusual: Unusual::Ratio(band.clone(), ratio), slips: Vec::new() });
        }
    }
    all
}
