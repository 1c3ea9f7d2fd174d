//! Owns which findings the garments in use bring on today's limb, and how their pressure is said.

use super::worn::{Given, mark_same_again, worn};
use super::worn_harm::worn_harm;
use super::{LimbAssessment, LimbContext, NotHeld, Opened, WornGarment, WornPressure, WornState};
use crate::finding::{self, Finding, Place};
use crate::garment::Chart;
use crate::record::{GarmentInUse, LimbRecord};
use crate::screening::Screened;
use crate::volume::{Course, Drift, LimbCourse, drift};
use crate::words;

/// Girths that have left the size worn, told once for each garment.
fn outgrown(
    limb: &LimbRecord,
    garments: &[GarmentInUse],
    charts: &[&Chart],
    place: Place,
) -> (Vec<Drift>, Vec<Finding>) {
    let all = drift(limb, garments, charts);
    let mut garments: Vec<String> = all.iter().map(garment_name).collect();
    garments.dedup();
    let found = garments
        .into_iter()
        .map(|garment| {
            let said: Vec<String> = all
                .iter()
                .filter(|one| garment_name(one) == garment)
                .map(|one| {
                    let side = if one.by_tenths > 0 { "above" } else { "below" };
                    format!("{} {side} its range {}", words::cm(one.by_tenths.abs()), words::at(one.landmark))
                })
                .collect();
            finding::garment_outgrown::garment_outgrown(place, &garment, &said)
        })
        .collect();
    (all, found)
}

fn garment_name(one: &Drift) -> String {
    format!("{}, size {}", one.garment, one.size)
}

/// The garments in use of every limb on the girths of today.
#[derive(Default)]
pub(super) struct InUse {
    /// Girths that have left their size, by limb.
    pub drift: Vec<(usize, Drift)>,
    /// What each garment presses.
    pub worn: Vec<WornGarment>,
}

impl InUse {
    /// Looks at those of one limb; what is found.
    pub(super) fn look(
        &mut self,
        course: &LimbCourse,
        context: &LimbContext<'_>,
        screened: &Screened,
        opened: &Opened,
    ) -> Vec<Finding> {
        let (index, limb, setting) = (context.index, context.limb, context.setting);
        let charts: Vec<&Chart> = opened.charts.iter().collect();
        let (drift, mut findings) = outgrown(limb, &course.garments, &charts, Place::limb(index));
        let given =
            Given { charts: &opened.charts, outfits: &opened.outfits, visits: &opened.visits, setting };
        let worn = worn(index, course, limb, &given);
        let place = Place::limb(index);
        findings.extend(worn.iter().filter_map(|one| of_worn(one, place)));
        findings.extend(worn_harm(&course.garments, screened, context.record, limb, &given, place));
        self.drift.extend(drift.into_iter().map(|one| (index, one)));
        self.worn.extend(worn);
        findings
    }

    /// Marks those that can be ordered again as they are.
    pub(super) fn mark_same_again(
        &mut self,
        limbs: &[LimbAssessment],
        course: Option<&Course>,
        findings: &[Finding],
    ) {
        if let Some(course) = course {
            mark_same_again(&mut self.worn, limbs, course, &self.drift, findings);
        }
    }
}

/// What a garment in use presses, as a sentence without a full stop.
pub fn worn_words(one: &WornGarment) -> String {
    let held = match &one.held {
        Ok(held) => held,
        Err(why) => return format!("The pressure of {} is not worked out: {}", one.garment, why_words(why)),
    };
    let where_it_lies = match held.state {
        WornState::InClass => "in",
        WornState::CannotTell => "which the error allows in",
        WornState::TooLow => "below",
        WornState::TooHigh => "above",
    };
    let then = held.then.map_or_else(
        || "; what it was when given is not known".to_owned(),
        |(on, was)| format!("; {} by the girths of {}", mmhg(was), words::date_short(on)),
    );
    format!(
        "By today's girths {} presses {} {}, {where_it_lies} {}{then}",
        one.garment,
        with_range(held.now),
        words::at(held.landmark),
        held.claimed
    )
}

/// What is known of its wear, and whether it can be ordered again; sentences without a full stop.
pub fn worn_notes(one: &WornGarment) -> Vec<String> {
    let mut all = Vec::new();
    if let Some(wear) = one.wear {
        let [new, first, last] =
            wear.points.map(|(months, mmhg)| (words::whole(months), words::trimmed(mmhg, 1)));
        all.push(format!(
            "Wear is not taken off. Published of flat-knit stockings of class {}: {} mmHg new, {} after {} month and {} after {} months of wear (Veraart 1997, Phlebology)",
            wear.class, new.1, first.1, first.0, last.1, last.0
        ));
    }
    if let Some(since) = one.again_since {
        all.push(format!(
            "Nothing has changed beyond error since {}: {} can be ordered again as it is, by today's girths",
            words::date_short(since),
            one.garment
        ));
    }
    all
}

fn mmhg(one: WornPressure) -> String {
    let least = if one.at_least { "at least " } else { "about " };
    format!("{least}{}", words::mmhg(one.mmhg))
}

fn with_range(one: WornPressure) -> String {
    match one.range {
        Some(range) => format!("{} ({} to {})", mmhg(one), words::whole(range.low), words::whole(range.high)),
        None => mmhg(one),
    }
}

fn why_words(why: &NotHeld) -> String {
    match why {
        NotHeld::NotGiven => "no chart or garment file of that name is among the files".to_owned(),
        NotHeld::Several => "several charts of that name are among the files".to_owned(),
        NotHeld::NoSize => "the record does not say which size".to_owned(),
        NotHeld::NoSuchSize => "its chart has no such size".to_owned(),
        NotHeld::NoClass => "it claims no class".to_owned(),
        NotHeld::NoMark(landmark) => {
            format!("its class is judged {}, where it is not known on this limb", words::at(*landmark))
        }
        NotHeld::NoFabric => {
            "without a fabric and relaxed girths only girths and stretch are known".to_owned()
        }
    }
}

/// Findings of a garment in use: its class, the limit, a rise; the weightiest carries the others.
fn of_worn(one: &WornGarment, place: Place) -> Option<Finding> {
    let state = one.held.as_ref().map_or(WornState::CannotTell, |held| held.state);
    let mut said: Vec<String> = Vec::new();
    let mut at = None;
    if matches!(state, WornState::TooLow | WornState::TooHigh) {
        said.push(format!("{}.", worn_words(one)));
        at = one.held.as_ref().ok().map(|held| held.landmark);
    }
    if let Some((landmark, pressure)) = &one.above_limit
        && (state != WornState::TooHigh || at != Some(*landmark))
    {
        let what = format!("{} {}", mmhg(*pressure), words::at(*landmark));
        said.push(format!(
            "By today's girths {} presses {what}, which is more than any garment should.",
            one.garment
        ));
        at = at.or(Some(*landmark));
    }
    if let Some(rise) = &one.rise {
        said.push(format!("By today's girths, {}: {rise}", one.garment));
    }
    let place = at.map_or(place, |landmark| place.at(landmark));
    let high = state == WornState::TooHigh || one.above_limit.is_some() || one.rise.is_some();
    match said.as_slice() {
        [] => None,
        _ if high => Some(finding::worn_pressure::too_high(place, &said.join(" "))),
        _ => Some(finding::worn_pressure::too_low(place, &said.join(" "))),
    }
}
