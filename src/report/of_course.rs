//! Owns how the course over the visits becomes its block.

use jiff::civil::Date;

use super::of_volume::{percent, place_words};
use super::{ChangeBlock, CourseBlock, DriftBlock, DueBlock, Figure, ReadyBlock, VisitBlock, WornBlock};
use crate::anatomy::Limb;
use crate::assessment::{
    WornGarment, change_words, protocol_words, ready_way, ready_words, wear_words, worn_notes, worn_words,
};
use crate::volume::{
    Change, Course, Drift, Due, DueKind, LimbCourse, NoExcess, Ready, TWO_SIDED, Visit, VolumeNumbers,
};
use crate::words;

impl CourseBlock {
    /// Of a course, whose limbs stand in the report's order, with the girths that have left their size and
    /// the garments in use by today's girths.
    pub fn of(
        course: &Course,
        limb: Limb,
        drift: &[(usize, Drift)],
        worn: &[WornGarment],
        numbers: &VolumeNumbers,
    ) -> Self {
        let each = || course.limbs.iter().enumerate();
        let several = course.limbs.len() > 1;
        let begins = |one: &LimbCourse| {
            if several {
                words::capital(&format!("{} {}: ", one.side.name(), limb.name()))
            } else {
                String::new()
            }
        };
        Self {
            whose: each().map(|(_, one)| begins(one)).collect(),
            visits: each()
                .flat_map(|(limb, one)| {
                    let first = one.visits.first().map(|visit| visit.measured_on);
                    one.visits.iter().map(move |visit| of_visit(limb, first, visit))
                })
                .collect(),
            changes: each()
                .flat_map(|(limb, one)| {
                    one.changes.iter().filter_map(move |change| of_change(limb, one, change))
                })
                .collect(),
            ready: each().filter_map(|(limb, one)| Some(of_ready(limb, one.ready.as_ref()?, one))).collect(),
            due: each().flat_map(|(limb, one)| one.due.iter().map(move |due| of_due(limb, due))).collect(),
            drift: drift.iter().map(|(limb, one)| of_drift(*limb, one)).collect(),
            worn: worn.iter().map(of_worn).collect(),
            infections: each().map(|(_, one)| one.infections.in_a_year).max().unwrap_or_default(),
            notes: each()
                .flat_map(|(_, one)| {
                    let begins = begins(one);
                    notes(one, numbers).into_iter().map(move |note| format!("{begins}{note}"))
                })
                .collect(),
        }
    }
}

fn of_visit(limb: usize, first: Option<Date>, visit: &Visit) -> VisitBlock {
    let volume = &visit.volume;
    let day = first.and_then(|first| visit.measured_on.since(first).ok()).map_or(0, |span| span.get_days());
    let compared = visit.compared.as_ref();
    let ends = compared.map(|one| {
        let reach = TWO_SIDED * std::f64::consts::SQRT_2 * one.sd_between_ml;
        (one.measured.ml - reach, one.measured.ml + reach)
    });
    VisitBlock {
        measured_on: words::date_short(visit.measured_on),
        limb,
        volume_ml: volume.measured.and_then(|one| Figure::ml(one.ml)),
        other_ml: volume.other.and_then(|one| Figure::ml(one.ml)),
        excess_ml: volume.excess.and_then(|one| Figure::ml(one.ml)),
        excess_percent: volume.excess.and_then(|one| percent(one.percent)),
        sd_ml: visit.sd_between_ml.and_then(Figure::ml),
        day,
        compared_ml: compared.and_then(|one| Figure::ml(one.measured.ml)),
        compared_other_ml: compared.and_then(|one| Figure::ml(one.other?.ml)),
        compared_excess_ml: compared.and_then(|one| Figure::ml(one.excess?.ml)),
        compared_excess_percent: compared.and_then(|one| percent(one.excess?.percent)),
        unchanged_low_ml: ends.and_then(|(low, _)| Figure::ml(low)),
        unchanged_high_ml: ends.and_then(|(_, high)| Figure::ml(high)),
        series: visit.series,
    }
}

fn of_change(limb: usize, course: &LimbCourse, change: &Change) -> Option<ChangeBlock> {
    let on = |at: usize| course.visits.get(at).map(|visit| words::date_short(visit.measured_on));
    let (from, to) = (on(change.from)?, on(change.to)?);
    let excess = change.excess.as_ref();
    Some(ChangeBlock {
        what: if excess.is_some() { "excess" } else { "volume" },
        limb,
        change_percent: percent(change.volume.percent),
        detectable_percent: percent(change.volume.detectable_percent),
        beyond: Some(change.volume.beyond()),
        excess_change_ml: excess.and_then(|one| Figure::ml(one.ml)),
        excess_detectable_ml: excess.and_then(|one| Figure::ml(one.detectable_ml)),
        excess_beyond: excess.map(|one| one.beyond()),
        words: change_words(change, &from, course.worsening.is_some()),
        from,
        to,
    })
}

fn of_ready(limb: usize, ready: &Ready, course: &LimbCourse) -> ReadyBlock {
    let is_worse = course.worsening.is_some();
    // In use for months and unchanged: a plateau by the week is not asked for.
    let unchanged = ready.line.is_none()
        && course.since_given.as_ref().is_some_and(|one| !one.beyond() && !one.volume.beyond());
    let line = ready.line;
    ReadyBlock {
        limb,
        state: ready.state.word(),
        loss_percent_a_week: line.and_then(|line| percent(line.loss)),
        low: line.and_then(|line| percent(line.low())),
        high: line.and_then(|line| percent(line.high())),
        visits: ready.visits,
        decide: ready.decide.filter(|_| !is_worse && !unchanged).map(|_| ready_way(ready)),
        words: if is_worse {
            "The swelling has grown: whether the limb has settled is asked again once it is treated."
                .to_owned()
        } else {
            ready_words(ready).unwrap_or_else(|| {
                "The visits are too few, or too close together, to tell whether the limb has settled."
                    .to_owned()
            })
        },
    }
}

fn of_due(limb: usize, due: &Due) -> DueBlock {
    let what = match due.kind {
        DueKind::FirstLook => "first look at",
        DueKind::Recheck => "re-check of",
        DueKind::Regular => "regular re-check of",
        DueKind::Remeasure => "measuring again for a new",
        DueKind::Renewal => "renewal of",
    };
    let wear = due.wear.map_or_else(String::new, |wear| format!(" ({})", wear_words(wear)));
    DueBlock {
        limb,
        what: format!("{what} {}{wear}", due.garment),
        kind: due.kind.word(),
        on: words::date_short(due.on),
        by: (due.by != due.on).then(|| words::date_short(due.by)),
        late: due.is_late,
        basis: due.kind.basis().word(),
    }
}

fn of_drift(limb: usize, one: &Drift) -> DriftBlock {
    DriftBlock {
        limb,
        landmark: one.landmark,
        garment: format!("{}, size {}", one.garment, one.size),
        by_cm: Figure::cm(one.by_tenths),
    }
}

fn of_worn(one: &WornGarment) -> WornBlock {
    let held = one.held.as_ref().ok();
    let now = held.map(|held| held.now);
    let range = now.and_then(|now| now.range);
    let then = held.and_then(|held| held.then);
    WornBlock {
        limb: one.limb,
        garment: one.garment.clone(),
        state: held.map(|held| held.state.word()),
        landmark: held.map(|held| held.landmark),
        class: held.map(|held| held.claimed.clone()),
        then_on: then.map(|(on, _)| words::date_short(on)),
        then_mmhg: then.filter(|(_, was)| !was.at_least).and_then(|(_, was)| Figure::mmhg(was.mmhg)),
        now_mmhg: now.filter(|now| !now.at_least).and_then(|now| Figure::mmhg(now.mmhg)),
        now_bound: now.filter(|now| now.at_least).and_then(|now| Figure::mmhg(now.mmhg)),
        low_mmhg: range.and_then(|range| Figure::mmhg(range.low)),
        high_mmhg: range.and_then(|range| Figure::mmhg(range.high)),
        chance: held.and_then(|held| held.chance).and_then(Figure::chance),
        words: worn_words(one),
        notes: worn_notes(one),
    }
}

/// What holds beside, in sentences.
fn notes(course: &LimbCourse, numbers: &VolumeNumbers) -> Vec<String> {
    let mut all = Vec::new();
    for pair in course.visits.windows(2) {
        let [_, visit] = pair else { continue };
        if visit.changes.is_empty() {
            continue;
        }
        let differs: Vec<String> = visit.changes.iter().map(protocol_words).collect();
        let anew = visit.changes.iter().any(crate::volume::ProtocolChange::starts_series);
        let meaning = if anew { "; its volumes are not compared with those before" } else { "" };
        all.push(format!(
            "The visit of {} differs from the one before: {}{meaning}.",
            words::date_short(visit.measured_on),
            words::list(&differs)
        ));
    }
    let shared = course
        .visits
        .iter()
        .filter_map(|visit| visit.compared)
        .filter(|one| one.has_further)
        .map(|one| one.marks)
        .min();
    if let Some(marks) = shared {
        all.push(format!(
            "The visits do not have the same marks: the volumes of the course are by the {} that they share.",
            words::counted(marks, "mark", "marks")
        ));
    }
    let on = |at: usize| course.visits.get(at).map(|visit| words::date_short(visit.measured_on));
    let mut copied = false;
    for change in &course.changes {
        let Some(since) = on(change.from) else { continue };
        if let Some(excess) = &change.excess {
            // A change that prints as nothing is told once, as no change.
            let shown = excess.reduction_percent.filter(|one| words::trimmed(one.abs(), 1) != "0");
            if let Some(reduction) = shown {
                let (what, share) =
                    if reduction < 0.0 { ("has grown by", -reduction) } else { ("is smaller by", reduction) };
                // Growth that is judged as such is not called error beside it.
                let judged = excess.beyond() || (reduction < 0.0 && course.worsening.is_some());
                let error = if judged { "" } else { ", within measurement error" };
                all.push(format!(
                    "Since {since} the excess {what} {} % of what it was{error}.",
                    words::trimmed(share, 1)
                ));
            }
            if excess.other_identical && !copied {
                copied = true;
                all.push(format!(
                    "Every girth of the other limb is the same as on {since}; if it was copied and not measured, the change of the excess is wrong."
                ));
            }
        }
        all.extend(change.no_excess.and_then(|why| no_excess_words(why, &since)));
        if let Some(adjusted) = change.weight_adjusted_percent {
            all.push(format!(
                "Since {since} the arm changed by {} % against the body weight.",
                words::trimmed(adjusted, 1)
            ));
        }
    }
    for one in &course.hand_or_foot {
        let Some(since) = on(one.from) else { continue };
        let error = if one.beyond() { "" } else { ", within measurement error" };
        all.push(format!(
            "Since {since} the girth {} went from {} to {}{error}.",
            match one.place {
                crate::volume::Place::Landmark(landmark) => words::at(landmark),
                at @ crate::volume::Place::At(_) => place_words(at),
            },
            words::cm_short(one.was.tenths()),
            words::cm(one.now.tenths())
        ));
    }
    if let Some(change) = course.since_given.as_ref().filter(|one| !one.beyond() && !one.volume.beyond())
        && course.worsening.is_none()
        && let Some(fitted) = on(change.from)
    {
        all.push(format!(
            "Since the last visit up to the day the garment in use was given ({fitted}) the limb has not changed by more than measuring explains."
        ));
    }
    if course.due.iter().any(|one| one.kind == DueKind::Renewal) {
        all.push("Before a garment is ordered again the limb is measured again.".to_owned());
    }
    if let Some(relative) = course.relative
        && let Some(since) = on(relative.from)
    {
        let (early, published) = numbers.early_percent;
        let trigger = [published, early].into_iter().find(|one| relative.reaches(*one));
        let said = trigger
            .map(|one| format!("; it reaches the early trigger of {} %", words::trimmed(one, 1)))
            .unwrap_or_default();
        all.push(format!(
            "Relative volume change since the visit before treatment ({since}): {} %{said}.",
            words::trimmed(relative.percent, 1)
        ));
    }
    all
}

fn no_excess_words(why: NoExcess, since: &str) -> Option<String> {
    let said = match why {
        NoExcess::NotOneSided => return None,
        NoExcess::NotThen => "the other limb was not measured then",
        NoExcess::NotNow => "the other limb was not measured this time",
        NoExcess::OtherMarks => "the other limb's marks are at other places",
    };
    Some(format!("Since {since} the excess cannot be compared: {said}."))
}
