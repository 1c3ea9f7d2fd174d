//! Owns what a sensor read: as pressures along the limb, and against the estimate.

use super::falls::{Asked, FallOf, is_judged};
use super::on_limb::tapes;
use super::{EstimateRules, MarkEstimate, OnLimb};
use crate::anatomy::Landmark;
use crate::gradient::{Fall, FallMark, FallSetting, Grade, GradientBasis, MarkKind, judge};
use crate::quantity::mmhg;
use crate::record::{Reading, SensorSide};

/// The mean of the readings at one mark.
#[derive(Clone, Copy, Debug)]
pub struct ReadAt {
    /// mmHg.
    pub mmhg: f64,
    /// SD of the mean, mmHg.
    pub sd: f64,
    /// How many readings.
    pub count: usize,
    /// Whether one of them was taken in the hollow beside the ankle bone.
    pub in_hollow: bool,
}

/// Reading and estimate at one mark.
#[derive(Clone, Copy, Debug)]
pub struct AgainstReading {
    /// Where.
    pub landmark: Landmark,
    /// What was read.
    pub read: ReadAt,
    /// The estimate, mmHg.
    pub estimate_mmhg: f64,
    /// Its SD by tape and ruler, mmHg: what a common factor cannot explain.
    pub own_sd: f64,
    /// Its SD as worn, mmHg.
    pub worn_sd: f64,
    /// Whether the two contradict each other.
    pub contradicts: bool,
}

/// What the readings say.
#[derive(Clone, Debug)]
pub struct ReadingsVerdict {
    /// Their fall.
    pub fall: Fall,
    /// Whether every judged mark has one.
    pub whole: bool,
    /// Whether they would reject only by a reading in the hollow beside the ankle bone.
    pub rests_on_hollow: bool,
    /// Every mark with both.
    pub against: Vec<AgainstReading>,
    /// Whether readings and estimate contradict each other.
    pub contradicts: bool,
}

impl ReadingsVerdict {
    /// Whether they decide alone.
    pub fn decides(&self) -> bool {
        self.whole && !self.rests_on_hollow
    }

    /// Whether they would decide alone and rise by nothing but the reading in the hollow: then they reject nothing,
    /// and they do not pass the garment either.
    pub fn leaves_open(&self) -> bool {
        self.whole && self.rests_on_hollow
    }
}

/// SD of a reading taken so.
fn sd_of(reading: &Reading, rules: &EstimateRules) -> f64 {
    let stated = reading.sd.map_or(rules.reading_sd_mmhg, mmhg);
    if reading.sensor_side == Some(SensorSide::AnkleHollow) {
        stated.max(rules.hollow_sd_mmhg)
    } else {
        stated
    }
}

/// The mean of the readings at a landmark.
pub(super) fn read_at(readings: &[&Reading], landmark: Landmark, rules: &EstimateRules) -> Option<ReadAt> {
    let here: Vec<&&Reading> = readings.iter().filter(|one| one.landmark == landmark).collect();
    let count = f64::from(u32::try_from(here.len()).ok()?);
    if here.is_empty() {
        return None;
    }
    Some(ReadAt {
        mmhg: here.iter().map(|one| mmhg(one.pressure)).sum::<f64>() / count,
        sd: here.iter().map(|one| sd_of(one, rules).powi(2)).sum::<f64>().sqrt() / count,
        count: here.len(),
        in_hollow: here.iter().any(|one| one.sensor_side == Some(SensorSide::AnkleHollow)),
    })
}

/// The fall of the readings alone; none where fewer than two judged marks have one.
pub(super) fn fall_of(
    on: &OnLimb<'_>,
    readings: &[&Reading],
    to: Landmark,
    hollow: bool,
    rules: &EstimateRules,
) -> Option<Fall> {
    let (asked, setting) = asked(on, readings, to, hollow, rules);
    (asked.marks.len() >= 2).then(|| judge(&asked.marks, &setting))
}

/// The fall of the readings as it is asked.
pub(super) fn asked(
    on: &OnLimb<'_>,
    readings: &[&Reading],
    to: Landmark,
    hollow: bool,
    rules: &EstimateRules,
) -> (Asked, FallSetting<'static>) {
    let marks: Vec<FallMark> = on
        .named()
        .filter(|(landmark, _)| is_judged(*landmark) && *landmark <= to)
        .filter_map(|(landmark, mark)| {
            let read = read_at(readings, landmark, rules).filter(|read| hollow || !read.in_hollow)?;
            Some(FallMark {
                landmark,
                at_cm: mark.at.cm(),
                girth_cm: mark.girth().cm(),
                girth_sd_cm: mark.sd_cm(on.limb, &rules.tape),
                tapes: tapes(mark),
                share: 1.0,
                what: MarkKind::Read { mmhg: read.mmhg, sd: read.sd },
            })
        })
        .collect();
    let setting = FallSetting {
        limb: on.limb,
        to,
        basis: GradientBasis::Readings,
        knits: Vec::new(),
        band: rules.band,
        together: false,
        rules: rules.fall,
    };
    (
        Asked {
            of: FallOf::Readings,
            marks,
            basis: GradientBasis::Readings,
            band: rules.band,
            knit: None,
            to,
            unheld: None,
        },
        setting,
    )
}

/// What the readings say of a garment whose marks are estimated.
pub(super) fn verdict(
    on: &OnLimb<'_>,
    readings: &[&Reading],
    marks: &[MarkEstimate],
    to: Landmark,
    estimated: Option<Grade>,
    rules: &EstimateRules,
) -> Option<ReadingsVerdict> {
    let fall = fall_of(on, readings, to, true, rules);
    let against: Vec<AgainstReading> = marks.iter().filter_map(against).collect();
    let fall = match fall {
        Some(fall) => fall,
        None if against.is_empty() => return None,
        // One reading is no fall, but it can contradict the estimate.
        None => judge(&[], &asked(on, readings, to, true, rules).1),
    };
    let rejects = |grade: Grade| grade <= Grade::Likely;
    let rests_on_hollow = rejects(fall.grade)
        && readings.iter().any(|one| one.sensor_side == Some(SensorSide::AnkleHollow))
        && !fall_of(on, readings, to, false, rules).is_some_and(|without| rejects(without.grade));
    let judged = on.named().filter(|(landmark, _)| is_judged(*landmark) && *landmark <= to);
    let needed: Vec<Landmark> = if marks.is_empty() {
        judged.map(|(landmark, _)| landmark).collect()
    } else {
        marks.iter().filter(|mark| mark.judged).map(|mark| mark.landmark).collect()
    };
    let complete = needed.iter().all(|landmark| readings.iter().any(|one| one.landmark == *landmark));
    let falls = |grade: Grade| grade >= Grade::Possible;
    let apart = estimated.is_some_and(|estimated| {
        (rejects(estimated) && falls(fall.grade))
            || (falls(estimated) && rejects(fall.grade) && !rests_on_hollow)
    });
    // Tape and fabric bridge the hollow beside the ankle bone: what is read there contradicts nothing alone.
    let contradicts = apart || against.iter().any(|one| one.contradicts && !one.read.in_hollow);
    Some(ReadingsVerdict {
        whole: complete && fall.estimated.len() >= 2,
        fall,
        rests_on_hollow,
        against,
        contradicts,
    })
}

fn against(mark: &MarkEstimate) -> Option<AgainstReading> {
    let read = mark.reading?;
    let estimate_mmhg = mark.mmhg()?;
    let worn_sd = mark.sd_worn_mmhg().unwrap_or(mark.worn_sd);
    let apart = (read.mmhg - estimate_mmhg).abs();
    Some(AgainstReading {
        landmark: mark.landmark,
        read,
        estimate_mmhg,
        own_sd: mark.own_ln_sd().unwrap_or(0.0) * estimate_mmhg,
        worn_sd,
        contradicts: apart > super::mark::RANGE_SDS * read.sd.hypot(worn_sd),
    })
}
