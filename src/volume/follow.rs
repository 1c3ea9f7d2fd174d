//! Owns the working out of a course from the records of one client and limb.

use jiff::civil::Date;

use super::due::{current, due};
use super::limb_course::LimbCourse;
use super::pairs::{Track, change};
use super::seen::{Seen, changes};
use super::worsening::Rise;
use super::{
    Change, Course, GirthSince, Infections, PartOfLimb, Ready, RelativeChange, Since, TWO_SIDED, Visit,
    VolumeNumbers, WeightChange, Worsening, measure,
};
use crate::anatomy::Side;
use crate::record::{Affected, GarmentInUse, Pitting, Record};
use crate::rules::Rules;

/// The course of `records`, one client's, in any order; the newest is judged. `closely` holds the sides
/// where diabetes, lost feeling, a cap or cannot-report is recorded. None for no records.
pub fn course(records: &[&Record], closely: &[Side], today: Date, rules: &Rules) -> Option<Course> {
    let numbers = VolumeNumbers::of(rules);
    let mut order: Vec<usize> = (0..records.len()).collect();
    let key = |at: &usize| records.get(*at).map(|one| (one.measured_on, one.measured_at, &one.file));
    order.sort_by(|one, other| key(one).cmp(&key(other)).then(one.cmp(other)));
    let sorted: Vec<(usize, &Record)> =
        order.iter().filter_map(|at| Some((*at, *records.get(*at)?))).collect();
    let (_, newest) = sorted.last()?;
    let limbs = newest
        .limbs
        .iter()
        .map(|limb| of_limb(&sorted, limb.side, closely.contains(&limb.side), today, rules, &numbers))
        .collect();
    Some(Course { limbs, weight: weight(&sorted, &numbers), order })
}

fn of_limb(
    sorted: &[(usize, &Record)],
    side: Side,
    closely: bool,
    today: Date,
    rules: &Rules,
    numbers: &VolumeNumbers,
) -> LimbCourse {
    let seen: Vec<(usize, Seen<'_>)> =
        sorted.iter().filter_map(|(at, record)| Some((*at, Seen::of(record, side, numbers)?))).collect();
    let track = Track::of(seen.iter().map(|(_, one)| one.clone()).collect());
    let visits: Vec<Visit> = seen
        .iter()
        .enumerate()
        .map(|(number, (at, one))| {
            let before = number.checked_sub(1).and_then(|before| seen.get(before));
            let volume = measure(one.record, one.limb, rules);
            let sd_percent = volume
                .measured
                .map(|measured| super::detectable::visit_sd_percent(measured, volume.repeated, numbers));
            Visit {
                record: *at,
                measured_on: one.record.measured_on,
                sd_between_ml: sd_percent.zip(volume.measured).map(|(sd, limb)| sd * limb.ml / 100.0),
                volume,
                compared: track.compared(number, numbers),
                series: track.series_of(number),
                changes: before.map_or_else(Vec::new, |(_, before)| {
                    let places: Vec<f64> = before.positions().collect();
                    changes(before, &places, one)
                }),
            }
        })
        .collect();
    let newest = seen.last().map(|(_, one)| one);
    let garments = newest.map_or(&[][..], |_| last_garments(&seen));
    let measured = newest.map_or(today, |one| one.record.measured_on);
    let before = seen.iter().rev().nth(1).map(|(_, one)| one.record.measured_on);
    let dates = seen
        .iter()
        .flat_map(|(_, one)| one.record.infections.iter().chain(&one.limb.infections).copied())
        .collect();
    let age = newest.map_or(crate::record::AgeBand::Adult, |one| one.record.age_band);
    LimbCourse {
        side,
        changes: track.newest_changes(numbers),
        relative: relative(&track, numbers),
        ready: track
            .points(numbers)
            .map(|(whole, distal)| Ready::judge(&whole, &distal, pitting_increased(&seen), numbers)),
        worsening: worsening(&track, numbers),
        since_given: since_given(&track, garments, numbers),
        hand_or_foot: hand_or_foot(&seen),
        garments: current(garments).into_iter().cloned().collect(),
        due: due(garments, measured, age, closely, today, numbers),
        infections: Infections::of(dates, measured, before, today, numbers),
        visits,
    }
}

/// The garments of the last record that names any.
fn last_garments<'s>(seen: &'s [(usize, Seen<'_>)]) -> &'s [GarmentInUse] {
    seen.iter()
        .rev()
        .map(|(_, one)| one.limb.garments.as_slice())
        .find(|garments| !garments.is_empty())
        .unwrap_or_default()
}

/// Whether the skin pits more now than when it was last answered before.
fn pitting_increased(seen: &[(usize, Seen<'_>)]) -> bool {
    let rank = |one: &Seen<'_>| match one.limb.observed.pitting {
        Some(Pitting::None) => Some(0),
        Some(Pitting::Minor) => Some(1),
        Some(Pitting::Strong) => Some(2),
        Some(Pitting::Unknown) | None => None,
    };
    let mut newest_first = seen.iter().rev().map(|(_, one)| rank(one));
    let Some(now) = newest_first.next().flatten() else { return false };
    newest_first.flatten().next().is_some_and(|before| now > before)
}

/// Since the newest visit that is marked as before treatment.
fn relative(track: &Track<'_>, numbers: &VolumeNumbers) -> Option<RelativeChange> {
    let to = track.newest()?;
    let from = (0..to).rev().find(|at| track.seen(*at).is_some_and(|one| one.record.baseline))?;
    let found = change(track, from, to, Since::First, numbers)?;
    let (was, now) = (found.excess?.was, found.excess?.now);
    // Affected over other, from the excess over the other: A/U = 1 + e/100.
    let percent = 100.0 * ((1.0 + now.percent / 100.0) / (1.0 + was.percent / 100.0) - 1.0);
    Some(RelativeChange { from, to, percent })
}

fn worsening(track: &Track<'_>, numbers: &VolumeNumbers) -> Option<Worsening> {
    let newest = track.seen(track.newest()?)?;
    let affected = newest.record.affected;
    if newest.record.is_both() && !affected.includes(newest.limb.side) {
        return None;
    }
    let one_sided = matches!(affected, Affected::One(_));
    let to = track.newest()?;
    let judged = |at: usize, to: usize, from: &Track<'_>| {
        change(from, at, to, Since::Last, numbers).and_then(|found| Rise::of(&found, one_sided))
    };
    let of = |track: &Track<'_>| {
        // The last visit that can be judged against this one, and the one before that.
        let mut back = (0..to).rev().filter(|at| judged(*at, to, track).is_some());
        let (last, earlier) = (back.next()?, back.next());
        let before = earlier.and_then(|earlier| judged(earlier, last, track));
        let over = earlier.and_then(|earlier| judged(earlier, to, track));
        Worsening::judge(judged(last, to, track)?, before, over, numbers)
    };
    of(track).or_else(|| {
        let distal = of(&track.distal()?)?;
        Some(Worsening { part: Some(PartOfLimb::Distal), ..distal })
    })
}

/// Each girth on hand or foot against the last visit with the same origin that has it.
fn hand_or_foot(seen: &[(usize, Seen<'_>)]) -> Vec<GirthSince> {
    let Some(((_, newest), earlier)) = seen.split_last() else { return Vec::new() };
    let then = |place| {
        earlier
            .iter()
            .enumerate()
            .rev()
            .filter(|(_, (_, one))| one.record.positions_from == newest.record.positions_from)
            .find_map(|(at, (_, one))| {
                Some((at, *one.row.extremity.iter().find(|mark| mark.place == place)?))
            })
    };
    newest
        .row
        .extremity
        .iter()
        .filter_map(|mark| {
            let (from, was) = then(mark.place)?;
            Some(GirthSince {
                place: mark.place,
                from,
                was: was.girth,
                now: mark.girth,
                detectable_cm: TWO_SIDED * was.station.sd_cm.hypot(mark.station.sd_cm),
            })
        })
        .collect()
}

/// The change since the last visit on or before the day on which the newest garment was given.
fn since_given(track: &Track<'_>, garments: &[GarmentInUse], numbers: &VolumeNumbers) -> Option<Change> {
    let given = garments.iter().map(|one| one.given_on).max()?;
    let to = track.newest()?;
    let from = (0..to).rev().find(|at| track.seen(*at).is_some_and(|one| one.record.measured_on <= given))?;
    change(track, from, to, Since::Given, numbers)
}

/// Against the last earlier weight, and against that of the fitting of the garments in use; the greater.
fn weight(sorted: &[(usize, &Record)], numbers: &VolumeNumbers) -> Option<WeightChange> {
    let (_, newest) = sorted.last()?;
    let now = newest.weight_kg?;
    let given = newest.limbs.iter().flat_map(|limb| &limb.garments).map(|one| one.given_on).max();
    let earlier = || {
        let known = |(_, one): &(usize, &Record)| Some((one.weight_kg?, one.measured_on));
        sorted.iter().rev().skip(1).filter_map(known)
    };
    let fitted = given.and_then(|given| earlier().find(|(_, on)| *on <= given));
    let all = [earlier().next(), fitted].into_iter().flatten();
    all.filter_map(|(was, on)| WeightChange::of(was, now, on, numbers.weight_change_percent)).max_by(
        |one, other| {
            let share = |one: &WeightChange| (one.now_kg / one.was_kg).ln().abs();
            share(one).total_cmp(&share(other))
        },
    )
}
