//! Owns the block of the course.

use super::{ChangeBlock, CourseBlock, DriftBlock, DueBlock, Figure, ReadyBlock, VisitBlock};
use crate::assessment::{Assessment, change_words, due_words, protocol_words, ready_way, ready_words};
use crate::volume::{DueKind, LimbCourse};
use crate::words;

/// The block of the course; none where there is nothing to follow.
pub(super) fn course(found: &Assessment) -> Option<CourseBlock> {
    let course = found.course.as_ref()?;
    let mut visits = Vec::new();
    let mut changes = Vec::new();
    let mut ready = Vec::new();
    let mut due = Vec::new();
    let mut notes = Vec::new();
    let mut infections = 0;
    for (index, limb) in course.limbs.iter().enumerate() {
        visits.extend(visits_of(index, limb));
        changes.extend(changes_of(index, limb));
        ready.extend(ready_of(index, limb));
        due.extend(limb.due.iter().map(|one| DueBlock {
            what: due_words(one),
            on: one.by.to_string(),
            basis: one.kind.basis().word(),
        }));
        infections += limb.infections.in_a_year;
        notes.extend(notes_of(limb));
    }
    let renewals = course.limbs.iter().flat_map(|limb| &limb.due).any(|one| one.kind == DueKind::Renewal);
    if renewals {
        notes.push("Before a new garment is ordered the limb is measured again.".to_owned());
    }
    Some(CourseBlock {
        visits,
        changes,
        ready,
        due,
        drift: found
            .drift
            .iter()
            .map(|(limb, one)| DriftBlock {
                limb: *limb,
                landmark: one.landmark,
                garment: format!("{}, size {}", one.garment, one.size),
                by_cm: Figure::cm(one.by_tenths),
            })
            .collect(),
        infections,
        notes,
    })
}

fn visits_of(index: usize, limb: &LimbCourse) -> Vec<VisitBlock> {
    limb.visits
        .iter()
        .map(|visit| VisitBlock {
            measured_on: visit.measured_on.to_string(),
            limb: index,
            volume_ml: visit.volume.measured.and_then(|one| Figure::ml(one.ml)),
            other_ml: visit.volume.other.and_then(|one| Figure::ml(one.ml)),
            excess_ml: visit.volume.excess.and_then(|one| Figure::ml(one.ml)),
            excess_percent: visit.volume.excess.and_then(|one| Figure::new(one.percent, 1)),
            sd_ml: visit.sd_between_ml.and_then(Figure::ml),
            series: visit.series,
        })
        .collect()
}

fn changes_of(index: usize, limb: &LimbCourse) -> Vec<ChangeBlock> {
    limb.changes
        .iter()
        .filter_map(|change| {
            let from = limb.visits.get(change.from)?.measured_on.to_string();
            let to = limb.visits.get(change.to)?.measured_on.to_string();
            Some(ChangeBlock {
                what: "volume",
                words: format!("{}.", change_words(change, &from)),
                from,
                to,
                limb: index,
                change_percent: Figure::new(change.volume.percent, 1),
                detectable_percent: Figure::new(change.volume.detectable_percent, 1),
                beyond: Some(change.volume.beyond()),
            })
        })
        .collect()
}

fn ready_of(index: usize, limb: &LimbCourse) -> Option<ReadyBlock> {
    let ready = limb.ready.as_ref()?;
    let line = ready.line;
    Some(ReadyBlock {
        limb: index,
        state: ready.state.word(),
        loss_percent_a_week: line.and_then(|line| Figure::new(line.loss, 1)),
        low: line.and_then(|line| Figure::new(line.low(), 1)),
        high: line.and_then(|line| Figure::new(line.high(), 1)),
        visits: ready.visits,
        decide: ready.decide.as_ref().map(|_| ready_way(ready)),
        words: ready_words(ready).unwrap_or_default(),
    })
}

fn notes_of(limb: &LimbCourse) -> Vec<String> {
    let mut notes = Vec::new();
    for visit in &limb.visits {
        for change in &visit.changes {
            notes.push(format!("{}: {}.", words::date_short(visit.measured_on), protocol_words(change)));
        }
    }
    if let Some(relative) = limb.relative {
        notes.push(format!(
            "Relative volume change since the baseline: {} %.",
            words::trimmed(relative.percent, 1)
        ));
    }
    for change in &limb.changes {
        if let Some(percent) = change.weight_adjusted_percent {
            notes.push(format!("Weight-adjusted change: {} %.", words::trimmed(percent, 1)));
        }
        if let Some(percent) = change.excess.and_then(|excess| excess.reduction_percent) {
            notes.push(format!("Reduction of the excess: {} %.", words::trimmed(percent, 1)));
        }
    }
    notes
}
