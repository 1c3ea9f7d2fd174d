//! Owns what the garments in use press by today's girths, and pressed by those of their fitting, held against
//! the class that they claim.
//!
//! Estimates nothing itself: room `estimate` does, as for a garment that is to be fitted.
//!
//! Source: house rule: a pressure has left its class where the chance of the class is below that at which it is
//! said of a garment to be fitted (number `class-chance`); 60 mmHg (number `pressure-limit`).

use jiff::civil::Date;

use super::size_findings::fall_words;
use super::wanted::{claim_printed, claimed_band};
use super::{LimbAssessment, Outcome, Setting};
use crate::anatomy::{Landmark, Limb};
use crate::estimate::{EstimateRules, Estimated, MarkEstimate, OnLimb, Range, estimate};
use crate::finding::Finding;
use crate::garment::{Chart, Outfit, Piece};
use crate::gradient::Grade;
use crate::input::Text;
use crate::pressure::{PUBLISHED_WEAR, PublishedWear};
use crate::record::{GarmentInUse, LimbRecord, Record};
use crate::rules::NumberId;
use crate::volume::{Course, Drift, LimbCourse};

/// Why the pressure of a garment in use is not worked out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotHeld {
    /// No chart and no garment file of the run bears its label.
    NotGiven,
    /// Several charts bear it.
    Several,
    /// The record does not say which size.
    NoSize,
    /// The chart has no such size.
    NoSuchSize,
    /// It claims no class.
    NoClass,
    /// The class is judged at this landmark, which the garment does not cover or the record has not got.
    NoMark(Landmark),
    /// Without fabric or relaxed girth only its stretch is known.
    NoFabric,
}

/// Where a pressure lies against its class.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WornState {
    /// In it.
    InClass,
    /// Outside it, or at least so much, and not beyond chance.
    CannotTell,
    /// Below it, beyond chance.
    TooLow,
    /// Above it, beyond chance.
    TooHigh,
}

impl WornState {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::InClass => "in-class",
            Self::CannotTell => "cannot-tell",
            Self::TooLow => "too-low",
            Self::TooHigh => "too-high",
        }
    }
}

/// A pressure, or the least that it can be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WornPressure {
    /// mmHg.
    pub mmhg: f64,
    /// Whether it is the least that it can be: the fabric was not tested so far.
    pub at_least: bool,
    /// 95 % by tape, ruler and fabric; none without contact or beyond the curve.
    pub range: Option<Range>,
}

/// A garment in use, held against its class.
#[derive(Clone, Debug)]
pub struct Held {
    /// Where the class is judged.
    pub landmark: Landmark,
    /// The class as printed.
    pub claimed: String,
    /// By the girths of the visit at which it was fitted; none where that visit is not in the run or lacks the
    /// mark.
    pub then: Option<(Date, WornPressure)>,
    /// By today's girths.
    pub now: WornPressure,
    /// The chance of the class by today's girths; none beyond the curve.
    pub chance: Option<f64>,
    /// Where it lies.
    pub state: WornState,
}

/// A garment in use, or pieces worn together, by today's girths.
#[derive(Clone, Debug)]
pub struct WornGarment {
    /// The limb, by its place.
    pub limb: usize,
    /// As printed: label, and size where there is one.
    pub garment: String,
    /// Against its class.
    pub held: Result<Held, NotHeld>,
    /// A mark above the limit, with its pressure; the highest.
    pub above_limit: Option<(Landmark, WornPressure)>,
    /// The sentence about a likely or certain rise toward the trunk.
    pub rise: Option<String>,
    /// What wear took off stockings of its class, where it is one.
    pub wear: Option<PublishedWear>,
    /// The day since which nothing has changed beyond error, where the same garment can be ordered again.
    pub again_since: Option<Date>,
}

/// What is given in the run.
pub(super) struct Given<'a> {
    pub charts: &'a [Chart],
    pub outfits: &'a [Outfit],
    /// Every visit, oldest first.
    pub visits: &'a [Record],
    pub setting: &'a Setting,
}

/// Every garment in use of one limb, each for itself, then the pieces that a garment file puts together.
pub(super) fn worn(
    index: usize,
    course: &LimbCourse,
    limb: &LimbRecord,
    given: &Given<'_>,
) -> Vec<WornGarment> {
    let mut all: Vec<WornGarment> = Vec::new();
    for garment in &course.garments {
        let name = printed(garment);
        all.push(match outfit_of(garment, given) {
            Ok(outfit) => look(index, name, &outfit, garment.given_on, course, limb, given),
            Err(why) => {
                let held = Err(why);
                let (above_limit, rise, wear, again_since) = (None, None, None, None);
                WornGarment { limb: index, garment: name, held, above_limit, rise, wear, again_since }
            }
        });
    }
    for outfit in given.outfits.iter().filter(|one| one.pieces.len() > 1) {
        let own = |label: &Text| course.garments.iter().find(|one| is_called(&one.label, label));
        let pieces: Option<Vec<&GarmentInUse>> =
            outfit.pieces.iter().map(|worn| own(worn.piece.label())).collect();
        let on = pieces.and_then(|pieces| pieces.iter().map(|one| one.given_on).max());
        if let Some(on) = on.filter(|_| own(&outfit.label).is_none()) {
            all.push(look(index, outfit.label.to_string(), outfit, on, course, limb, given));
        }
    }
    all
}

fn is_called(one: &Text, other: &Text) -> bool {
    one.as_str() == other.as_str()
}

/// What a garment in use is: a size of a chart, else a garment file, else a piece of one.
pub(super) fn outfit_of(garment: &GarmentInUse, given: &Given<'_>) -> Result<Outfit, NotHeld> {
    let mut charts = given.charts.iter().filter(|one| one.label.as_str() == garment.label.as_str());
    if let Some(chart) = charts.next() {
        if charts.next().is_some() {
            return Err(NotHeld::Several);
        }
        let label = garment.size.as_ref().ok_or(NotHeld::NoSize)?;
        let size = chart.size_of(label.as_str()).and_then(|size| chart.garment(size));
        return size.map(|one| Outfit::of(Piece::Garment(Box::new(one)))).ok_or(NotHeld::NoSuchSize);
    }
    let whole = given.outfits.iter().find(|one| is_called(&one.label, &garment.label));
    let piece = || {
        given
            .outfits
            .iter()
            .flat_map(|one| &one.pieces)
            .find(|worn| is_called(worn.piece.label(), &garment.label))
            .map(|worn| Outfit { pieces: vec![worn.clone()], ..Outfit::of(worn.piece.clone()) })
    };
    whole.cloned().or_else(piece).ok_or(NotHeld::NotGiven)
}

fn look(
    limb: usize,
    garment: String,
    outfit: &Outfit,
    given_on: Date,
    course: &LimbCourse,
    now: &LimbRecord,
    given: &Given<'_>,
) -> WornGarment {
    let rules = EstimateRules::of(&given.setting.rules);
    let on = |marks| OnLimb { limb: outfit.limb, marks };
    let today = estimate(&on(&now.marks), outfit, &[], &rules);
    let then = course.fitted(given_on).and_then(|at| {
        let record = given.visits.get(course.visits.get(at)?.record)?;
        let marks = &record.limb_of(course.side)?.marks;
        Some((record.measured_on, estimate(&on(marks), outfit, &[], &rules)))
    });
    let limit = given.setting.number(NumberId::PressureLimit);
    let above = today.highest().filter(|(_, mmhg)| *mmhg > limit).map(|(landmark, _)| landmark);
    let risen = matches!(today.grade(), Some(Grade::Certain | Grade::Likely));
    WornGarment {
        limb,
        garment,
        held: held(outfit, &today, then.as_ref(), given.setting),
        above_limit: above.and_then(|landmark| Some((landmark, pressure_at(&today, landmark)?))),
        rise: if risen { fall_words(outfit, &today, &[]) } else { None },
        wear: published_wear(outfit),
        again_since: None,
    }
}

/// The published figures, where they are of its kind: a leg stocking of a class of RAL-GZ 387.
fn published_wear(outfit: &Outfit) -> Option<PublishedWear> {
    let claim = outfit.claim.as_ref()?;
    let kind = outfit.limb == Limb::Leg && outfit.pieces.len() == 1 && claim.scheme.id == "ral-gz-387-1";
    PUBLISHED_WEAR.into_iter().find(|one| kind && one.class == claim.class)
}

/// Marks the garments that can be ordered again as they are: the limb's check ends in a trial fitting of that very
/// size, and nothing has changed beyond error since it was fitted.
pub(super) fn mark_same_again(
    all: &mut [WornGarment],
    limbs: &[LimbAssessment],
    course: &Course,
    drift: &[(usize, Drift)],
    findings: &[Finding],
) {
    let told = |index: usize, id: &str| {
        findings.iter().any(|one| one.id.text() == id && one.place.limb.is_none_or(|limb| limb == index))
    };
    for (index, (limb, own)) in limbs.iter().zip(&course.limbs).enumerate() {
        let calm = limb.outcome == Some(Outcome::TrialFitting)
            && course.weight.is_none()
            && !drift.iter().any(|(of, _)| *of == index)
            && ![
                "worsening",
                "worn-pressure",
                "worn-feeling",
                "worn-reading",
                "wear-harm",
                "worn-allergen",
                "girths-old",
                "not-settled",
                "infection-recent",
            ]
            .iter()
            .any(|id| told(index, id));
        let since = own.since_given.as_ref().filter(|one| calm && !one.beyond() && !one.volume.beyond());
        let Some(visit) = since.and_then(|one| own.visits.get(one.from)) else { continue };
        let settled_by = |given: Date| own.infections.dates.iter().all(|one| *one <= given);
        for garment in own.garments.iter().filter(|one| settled_by(one.given_on)) {
            let chosen = limb.charts.iter().find(|chart| {
                let size = chart.size().map(|size| chart.size_label(size));
                chart.counted
                    && chart.chart.label.as_str() == garment.label.as_str()
                    && garment.size.as_ref().is_some_and(|worn| size == Some(worn.as_str()))
            });
            let fitted = own.fitted(garment.given_on).and_then(|at| own.visits.get(at));
            let same_visit = fitted.is_some_and(|one| one.measured_on == visit.measured_on);
            let name = printed(garment);
            let one = all.iter_mut().find(|one| one.limb == index && one.garment == name);
            // Of several charts of its label nobody knows which it is of.
            let is_known = |one: &&mut WornGarment| !matches!(one.held, Err(NotHeld::Several));
            if let Some(one) = one.filter(|one| chosen.is_some() && same_visit && is_known(one)) {
                one.again_since = Some(visit.measured_on);
            }
        }
    }
}

/// Label, and size where there is one.
pub(super) fn printed(garment: &GarmentInUse) -> String {
    match &garment.size {
        Some(size) => format!("{}, size {size}", garment.label),
        None => garment.label.to_string(),
    }
}

fn pressure_at(estimated: &Estimated, landmark: Landmark) -> Option<WornPressure> {
    let mark = estimated.marks.iter().find(|mark| mark.landmark == landmark)?;
    Some(WornPressure {
        mmhg: mark.at_least_mmhg()?,
        at_least: mark.bound_mmhg().is_some(),
        range: MarkEstimate::range(mark),
    })
}

fn held(
    outfit: &Outfit,
    today: &Estimated,
    then: Option<&(Date, Estimated)>,
    setting: &Setting,
) -> Result<Held, NotHeld> {
    let claim = outfit.claim.as_ref();
    let (Some(claim), Some(band)) = (claim, claimed_band(claim)) else { return Err(NotHeld::NoClass) };
    let landmark = today.reference.landmark;
    if !today.marks.iter().any(|mark| mark.landmark == landmark) {
        return Err(NotHeld::NoMark(landmark));
    }
    let now = pressure_at(today, landmark).ok_or(NotHeld::NoFabric)?;
    let chance = today.reference.claimed_chance;
    let beyond = chance.is_some_and(|chance| chance < setting.number(NumberId::ClassChance));
    let state = if band.is_above(now.mmhg) && (beyond || now.at_least) {
        WornState::TooHigh
    } else if band.is_below(now.mmhg) && beyond {
        WornState::TooLow
    } else if band.holds(now.mmhg) && !now.at_least {
        WornState::InClass
    } else {
        WornState::CannotTell
    };
    Ok(Held {
        landmark,
        claimed: claim_printed(claim),
        then: then.and_then(|(on, estimated)| Some((*on, pressure_at(estimated, landmark)?))),
        now,
        chance,
        state,
    })
}
