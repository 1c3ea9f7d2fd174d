//! Owns a limb's visits put into series, and the change between two of one series.

use super::change::{Change, ExcessChange, NoExcess, Since, VolumeChange};
use super::detectable::{TWO_SIDED, visit_sd_percent};
use super::measure::is_repeated;
use super::row::Row;
use super::seen::{Seen, changes, shared};
use super::{Compared, Excess, LimbVolume, Point, ProtocolChange, VolumeNumbers};
use crate::anatomy::Limb;
use crate::record::Affected;

/// A series: its visits and the places that all of them share.
#[derive(Clone, Debug)]
struct Series {
    members: Vec<usize>,
    places: Vec<f64>,
}

/// A limb's visits, oldest first, in series.
#[derive(Clone, Debug)]
pub(super) struct Track<'r> {
    seen: Vec<Seen<'r>>,
    series: Vec<Series>,
}

impl<'r> Track<'r> {
    /// Puts each visit into the latest series that it can be compared with, else begins one.
    pub(super) fn of(seen: Vec<Seen<'r>>) -> Self {
        let mut series: Vec<Series> = Vec::new();
        for (at, one) in seen.iter().enumerate() {
            let own: Vec<f64> = one.positions().collect();
            series.sort_by_key(|one| one.members.last().copied());
            let fits = series.iter_mut().rev().find(|series| {
                let then = series.members.last().and_then(|last| seen.get(*last));
                then.is_some_and(|then| {
                    !changes(then, &series.places, one).iter().any(ProtocolChange::starts_series)
                })
            });
            match fits {
                Some(series) => {
                    series.members.push(at);
                    series.places = shared(&series.places, &own);
                }
                None => series.push(Series { members: vec![at], places: own }),
            }
        }
        series.sort_by_key(|one| one.members.first().copied());
        Self { seen, series }
    }

    /// One visit.
    pub(super) fn seen(&self, at: usize) -> Option<&Seen<'r>> {
        self.seen.get(at)
    }

    /// The place of the newest visit.
    pub(super) fn newest(&self) -> Option<usize> {
        self.seen.len().checked_sub(1)
    }

    /// The series that a visit belongs to.
    pub(super) fn series_of(&self, at: usize) -> usize {
        self.series.iter().position(|one| one.members.contains(&at)).unwrap_or_default()
    }

    /// A visit's volumes by the marks that its series shares; none where they make no volume.
    pub(super) fn compared(&self, at: usize, numbers: &VolumeNumbers) -> Option<Compared> {
        let series = self.series.get(self.series_of(at))?;
        let whole = self.seen.get(at)?;
        let one = whole.at(&series.places);
        let measured = volume(&one, &one.row)?;
        let other = one.other.as_ref().and_then(|row| volume(&one, row));
        let affected = one.record.affected;
        let sd_percent = visit_sd_percent(measured, is_repeated(&one.row), numbers);
        Some(Compared {
            marks: one.row.marks.len(),
            has_further: one.row.marks.len() < whole.row.marks.len(),
            measured,
            other,
            excess: other.and_then(|other| Excess::of(affected, one.limb.side, measured, other)),
            sd_between_ml: sd_percent * measured.ml / 100.0,
        })
    }

    fn newest_series(&self) -> Option<&Series> {
        self.series.get(self.series_of(self.newest()?))
    }

    /// The changes of the newest visit, since the first of its series and since the last.
    pub(super) fn newest_changes(&self, numbers: &VolumeNumbers) -> Vec<Change> {
        let Some((to, members)) = self.newest().zip(self.newest_series().map(|one| &one.members)) else {
            return Vec::new();
        };
        let first = members.first().copied().filter(|at| *at != to);
        let last = members.iter().rev().nth(1).copied();
        let since_first = first.filter(|_| first != last).map(|at| (at, Since::First));
        let since_last = last.map(|at| (at, Since::Last));
        [since_first, since_last]
            .into_iter()
            .flatten()
            .filter_map(|(from, since)| change(self, from, to, since, numbers))
            .collect()
    }

    /// The volumes of the newest series for a line, by the marks that all its visits share, and those of
    /// the part below the joint; none where the newest visit begins it, or has no volume.
    pub(super) fn points(&self, numbers: &VolumeNumbers) -> Option<(Vec<Point>, Vec<Point>)> {
        let series = self.newest_series().filter(|one| one.members.len() > 1)?;
        let start = self.seen.first()?.record.measured_on;
        let mut whole = Vec::new();
        let mut distal = Vec::new();
        for one in series.members.iter().filter_map(|at| self.seen.get(*at)) {
            let one = one.at(&series.places);
            let days = one.record.measured_on.since(start).map_or(0, |span| span.get_days());
            let repeated = is_repeated(&one.row);
            let point = |volume: LimbVolume| Point {
                day: f64::from(days),
                ml: volume.ml,
                sd_percent: visit_sd_percent(volume, repeated, numbers),
            };
            whole.extend(volume(&one, &one.row).map(point));
            distal.extend(below(&one, &one.row).map(point));
        }
        // A part that some visits have not got is no course of its own.
        if distal.len() < whole.len() {
            distal.clear();
        }
        Some((whole, distal))
    }

    /// The same visits by the part below the joint alone; none where the newest has no mark there.
    pub(super) fn distal(&self) -> Option<Self> {
        let cut = |one: &Seen<'r>| {
            let joint = one.row.joint(one.record.limb)?;
            let keep = |row: &Row, joint: usize| Row {
                marks: row.marks.get(..=joint).map(<[_]>::to_vec).unwrap_or_default(),
                extremity: row.extremity.clone(),
            };
            let other = one.other.as_ref().map(|other| keep(other, joint));
            Some(Seen { row: keep(&one.row, joint), other, ..one.clone() })
        };
        self.seen.last().and_then(cut)?;
        // Half a disc belongs to either part; cut at the joint they are cones.
        let frustum = crate::record::VolumeMethod::Frustum;
        if self.seen.iter().any(|one| one.record.volume_method != frustum) {
            return None;
        }
        let empty = |one: &Seen<'r>| Seen { row: Row::default(), other: None, ..one.clone() };
        let seen = self.seen.iter().map(|one| cut(one).unwrap_or_else(|| empty(one))).collect();
        Some(Self { seen, series: self.series.clone() })
    }
}

fn volume(seen: &Seen<'_>, row: &Row) -> Option<LimbVolume> {
    row.volume(seen.record.volume_method)
}

fn below(seen: &Seen<'_>, row: &Row) -> Option<LimbVolume> {
    let [distal, _] = row.split(row.joint(seen.record.limb)?, seen.record.volume_method)?;
    Some(distal)
}

/// The change from one visit to another of the same series, by the marks that both share.
pub(super) fn change(
    track: &Track<'_>,
    from: usize,
    to: usize,
    since: Since,
    numbers: &VolumeNumbers,
) -> Option<Change> {
    if track.series_of(from) != track.series_of(to) {
        return None;
    }
    let (then, now) = (track.seen(from)?, track.seen(to)?);
    let (before, after): (Vec<f64>, Vec<f64>) = (then.positions().collect(), now.positions().collect());
    let places = shared(&before, &after);
    let on_shared_marks = places.len() < before.len() || places.len() < after.len();
    let (was, is) = (then.at(&places), now.at(&places));
    let of = |volume: LimbVolume, seen: &Seen<'_>| {
        (volume.ml, visit_sd_percent(volume, is_repeated(&seen.row), numbers))
    };
    let between = |one: LimbVolume, other: LimbVolume| {
        let ((was_ml, was_sd), (now_ml, now_sd)) = (of(one, &was), of(other, &is));
        VolumeChange {
            was_ml,
            now_ml,
            percent: 100.0 * (now_ml - was_ml) / was_ml,
            detectable_percent: TWO_SIDED * was_sd.hypot(now_sd),
        }
    };
    let (one, other) = (volume(&was, &was.row)?, volume(&is, &is.row)?);
    let limb = between(one, other);
    let distal = below(&was, &was.row).zip(below(&is, &is.row)).map(|(one, other)| between(one, other));
    let excess = excess(&was, &is, one, other, limb);
    let both_arms = now.record.limb == Limb::Arm && now.record.affected == Affected::Both;
    let weights = then.record.weight_kg.zip(now.record.weight_kg).filter(|_| both_arms);
    Some(Change {
        since,
        from,
        to,
        on_shared_marks,
        marks: places.len(),
        volume: limb,
        distal,
        excess: excess.ok(),
        no_excess: excess.err(),
        weight_adjusted_percent: weights
            .map(|(w1, w2)| 100.0 * (limb.now_ml * w1 / (w2 * limb.was_ml) - 1.0)),
    })
}

fn excess(
    then: &Seen<'_>,
    now: &Seen<'_>,
    was: LimbVolume,
    is: LimbVolume,
    limb: VolumeChange,
) -> Result<ExcessChange, NoExcess> {
    let affected = now.record.affected;
    if !matches!(affected, Affected::One(_)) || then.record.affected != affected {
        return Err(NoExcess::NotOneSided);
    }
    if then.record.other_marks(then.limb).is_none() && now.record.other_marks(now.limb).is_none() {
        // Never measured: there is no comparison that was lost.
        return Err(NoExcess::NotOneSided);
    }
    let missing = |seen: &Seen<'_>, otherwise| {
        if seen.record.other_marks(seen.limb).is_some() { NoExcess::OtherMarks } else { otherwise }
    };
    let before = then.other.as_ref().ok_or_else(|| missing(then, NoExcess::NotThen))?;
    let after = now.other.as_ref().ok_or_else(|| missing(now, NoExcess::NotNow))?;
    let positions = |row: &Row| -> Vec<f64> { row.marks.iter().map(|mark| mark.station.at_cm).collect() };
    let (one, two) = (positions(before), positions(after));
    if shared(&one, &two).len() != one.len() {
        return Err(NoExcess::OtherMarks);
    }
    let of = |seen: &Seen<'_>, limb: LimbVolume, row: &Row| {
        let other = volume(seen, row).ok_or(NoExcess::OtherMarks)?;
        Excess::of(affected, seen.limb.side, limb, other).ok_or(NoExcess::NotOneSided)
    };
    let (was, now_excess) = (of(then, was, before)?, of(now, is, after)?);
    let change = now_excess.ml - was.ml;
    Ok(ExcessChange {
        was,
        now: now_excess,
        ml: change,
        detectable_ml: limb.detectable_percent * limb.was_ml / 100.0,
        reduction_percent: (was.ml > 0.0).then(|| -100.0 * change / was.ml),
        other_identical: before.marks.iter().zip(&after.marks).all(|(one, two)| one.girth == two.girth),
    })
}
