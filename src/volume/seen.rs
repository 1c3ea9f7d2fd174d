//! Owns one limb at one visit as the course sees it, and what two visits have in common.

use super::row::Row;
use super::{ProtocolChange, VolumeNumbers};
use crate::anatomy::Side;
use crate::input::Text;
use crate::record::{LimbRecord, Record};

/// One limb at one visit.
#[derive(Clone, Debug)]
pub(super) struct Seen<'r> {
    pub(super) record: &'r Record,
    pub(super) limb: &'r LimbRecord,
    pub(super) row: Row,
    /// The other limb, where its marks are at the same places.
    pub(super) other: Option<Row>,
}

impl<'r> Seen<'r> {
    /// The limb of `side` at a visit; none where the record has not got it.
    pub(super) fn of(record: &'r Record, side: Side, numbers: &VolumeNumbers) -> Option<Self> {
        let limb = record.limb_of(side)?;
        let row = Row::of(&limb.marks, record.limb, record.positions_from, &numbers.tape);
        let other = record
            .other_marks(limb)
            .map(|marks| Row::of(marks, record.limb, record.positions_from, &numbers.tape))
            .filter(|other| row.same_places(other));
        Some(Self { record, limb, row, other })
    }

    /// The same limb by the marks at `places` alone.
    pub(super) fn at(&self, places: &[f64]) -> Self {
        let kept: Vec<usize> = self
            .positions()
            .enumerate()
            .filter(|(_, at)| places.iter().any(|place| same(*place, *at)))
            .map(|(number, _)| number)
            .collect();
        let keep = |row: &Row| Row {
            marks: kept.iter().filter_map(|at| row.marks.get(*at).copied()).collect(),
            extremity: row.extremity.clone(),
        };
        Self { row: keep(&self.row), other: self.other.as_ref().map(keep), ..self.clone() }
    }

    /// The positions of its marks, cm.
    pub(super) fn positions(&self) -> impl Iterator<Item = f64> {
        self.row.marks.iter().map(|mark| mark.station.at_cm)
    }
}

fn same(one: f64, other: f64) -> bool {
    // Positions are whole tenths of a millimetre; the slack absorbs the floating point only.
    (one - other).abs() <= VolumeNumbers::SAME_PLACE_CM + 1e-9
}

/// The places that two lists share.
pub(super) fn shared(one: &[f64], other: &[f64]) -> Vec<f64> {
    one.iter().copied().filter(|at| other.iter().any(|place| same(*place, *at))).collect()
}

/// What was done otherwise at `now`, whose marks are held against `places`, than at `then`.
pub(super) fn changes(then: &Seen<'_>, places: &[f64], now: &Seen<'_>) -> Vec<ProtocolChange> {
    let mut all = Vec::new();
    let (was, is) = (then.record, now.record);
    if was.volume_method != is.volume_method {
        all.push(ProtocolChange::Method(was.volume_method, is.volume_method));
    }
    if was.positions_from == is.positions_from {
        let own: Vec<f64> = now.positions().collect();
        let both = shared(places, &own);
        if both.len() < places.len() && both.len() < own.len() || both.len() < 2 {
            match (places.first(), own.first()) {
                (Some(first), Some(own)) if !same(*first, *own) => {
                    all.push(ProtocolChange::Start(*first, *own));
                }
                _ => all.push(ProtocolChange::Spacing),
            }
        } else if both.len() < places.len() || both.len() < own.len() {
            all.push(ProtocolChange::FurtherMarks { shared: both.len() });
        }
    } else {
        all.push(ProtocolChange::Origin(was.positions_from, is.positions_from));
    }
    if let (Some(then), Some(now)) = (&was.posture, &is.posture)
        && !same_posture(then, now)
    {
        all.push(ProtocolChange::Posture(then.clone(), now.clone()));
    }
    if let (Some(then), Some(now)) = (&was.measured_by, &is.measured_by)
        && then != now
    {
        all.push(ProtocolChange::Observer(then.clone(), now.clone()));
    }
    if let (Some(then), Some(now)) = (was.measured_at, is.measured_at) {
        let minutes = |time: jiff::civil::Time| i32::from(time.hour()) * 60 + i32::from(time.minute());
        let apart = f64::from((minutes(now) - minutes(then)).abs()) / 60.0;
        if apart > VolumeNumbers::HOURS_APART {
            all.push(ProtocolChange::Hour(apart));
        }
    }
    all
}

/// Whether two postures as written are one: alike, or one says the same with further words
/// (`seated`; `seated, arm supported`).
fn same_posture(one: &Text, other: &Text) -> bool {
    let words = |text: &Text| -> Vec<String> {
        text.as_str().split(',').map(|part| part.trim().to_lowercase()).collect()
    };
    let (one, other) = (words(one), words(other));
    one.iter().all(|part| other.contains(part)) || other.iter().all(|part| one.contains(part))
}
