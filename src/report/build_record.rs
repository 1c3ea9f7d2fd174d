//! Owns the record's blocks.

use super::{Figure, LengthBlock, MeasuredBlock, RecordBlock};
use crate::assessment::ChartAssessment;
use crate::record::{Affected, AgeBand, Allergies, LengthName, LimbRecord, Record};

/// The record's block.
pub(super) fn record(record: &Record) -> RecordBlock {
    RecordBlock {
        client: record.client.to_string(),
        measured_on: record.measured_on.to_string(),
        measured_by: record.measured_by.as_ref().map(ToString::to_string),
        limb: record.limb_words(),
        affected: match record.affected {
            Affected::One(side) => side.name(),
            Affected::Both => "both",
            Affected::Neither => "none",
        },
        age_band: match record.age_band {
            AgeBand::Adult => "adult",
            AgeBand::Child => "child",
        },
        positions_from: record.positions_from.name(),
        posture: record.posture.as_ref().map(ToString::to_string),
        shown: record.shown.iter().map(ToString::to_string).collect(),
        file: record.file.clone(),
    }
}

/// Allergies as written; none = not asked.
pub(super) fn allergies(record: &Record) -> Option<Vec<String>> {
    match &record.allergies {
        Allergies::NotAsked => None,
        Allergies::None => Some(Vec::new()),
        Allergies::Some(list) => Some(list.iter().map(|one| one.text.clone()).collect()),
    }
}

/// Every mark, with the other limb's girth at the same landmark or, for a serial mark, position.
pub(super) fn marks(record: &Record, limb: &LimbRecord) -> Vec<MeasuredBlock> {
    let other = record.other_marks(limb);
    limb.marks
        .iter()
        .map(|mark| MeasuredBlock {
            landmark: mark.landmark,
            at_cm: Figure::cm(mark.at.tenths()),
            girth_cm: Figure::cm(mark.girth().tenths()),
            tapes: mark.readings(),
            other_cm: other
                .and_then(|other| {
                    other.iter().find(|one| match mark.landmark {
                        Some(_) => one.landmark == mark.landmark,
                        None => one.landmark.is_none() && one.at == mark.at,
                    })
                })
                .map(|one| Figure::cm(one.girth().tenths())),
        })
        .collect()
}

/// Lengths as stated, and those that the charts ask for from the positions.
pub(super) fn lengths(record: &Record, limb: &LimbRecord, charts: &[ChartAssessment]) -> Vec<LengthBlock> {
    let mut names: Vec<LengthName> = limb.lengths.keys().copied().collect();
    names.extend(charts.iter().flat_map(|chart| chart.chart.lengths()));
    names.sort_unstable();
    names.dedup();
    names
        .into_iter()
        .filter_map(|name| {
            let (span, stated) = limb.length(name, record.positions_from)?;
            Some(LengthBlock {
                name: name.name().replace('-', " "),
                length_cm: Figure::cm(span.tenths()),
                from_positions: !stated,
            })
        })
        .collect()
}
