//! Owns the volume's block.

use super::{DifferenceBlock, Figure, GradeBlock, PartBlock, VolumeBlock};
use crate::assessment::part_name;
use crate::record::{LimbRecord, Record};
use crate::volume::{Place, Uncompared, VisitVolume};
use crate::words;

/// The volume's block.
pub(super) fn volume(record: &Record, _limb: &LimbRecord, one: &VisitVolume) -> VolumeBlock {
    let ml = |volume: Option<crate::volume::LimbVolume>| volume.and_then(|volume| Figure::ml(volume.ml));
    VolumeBlock {
        method: one.method.word(),
        spacing_cm: one.spacing_cm.and_then(|cm| Figure::new(cm, 1)),
        measured_ml: ml(one.measured),
        other_ml: ml(one.other),
        excess_ml: one.excess.and_then(|excess| Figure::ml(excess.ml)),
        excess_percent: one.excess.and_then(|excess| Figure::new(excess.percent, 1)),
        sd_ml: one.sd_ml().and_then(Figure::ml),
        grades: one
            .grades
            .iter()
            .map(|grade| GradeBlock { set: grade.set.clone(), grade: grade.grade.clone() })
            .collect(),
        parts: one
            .parts
            .iter()
            .map(|part| PartBlock {
                part: part_name(record.limb, part.part).to_owned(),
                measured_ml: Figure::ml(part.measured.ml),
                other_ml: ml(part.other),
                excess_percent: part.excess.and_then(|excess| Figure::new(excess.percent, 1)),
            })
            .collect(),
        differences: one
            .girths
            .iter()
            .chain(&one.extremity)
            .filter_map(|pair| {
                let mark = match pair.place {
                    Place::Landmark(landmark) => words::label(landmark),
                    Place::At(at) => words::cm(at.tenths()),
                };
                Some(DifferenceBlock { mark, difference_cm: Figure::cm(pair.difference_tenths?) })
            })
            .collect(),
        not_compared: one.uncompared.and_then(|why| match why {
            Uncompared::NoOther => None,
            Uncompared::OtherMarks => Some("The marks of both limbs are not at the same places.".to_owned()),
            Uncompared::NoVolume => Some("A volume cannot be worked out from these marks.".to_owned()),
        }),
        words: grades_words(one),
    }
}

/// `ISL: minimal; CTCAE v3: grade 2; 200 mL: met`.
fn grades_words(one: &VisitVolume) -> String {
    let all: Vec<String> = one
        .grades
        .iter()
        .map(|grade| match (grade.set.as_str(), grade.grade.as_str()) {
            ("isl", grade) => format!("ISL: {grade}"),
            ("ctcae-v3", "none") => "CTCAE v3: none".to_owned(),
            ("ctcae-v3", grade) => format!("CTCAE v3: grade {grade}"),
            ("200-ml", grade) => format!("200 mL: {}", met(grade)),
            ("10-percent", grade) => format!("10 %: {}", met(grade)),
            ("2-cm", grade) => format!("2 cm: {}", met(grade)),
            (set, grade) => format!("{}: {grade}", set.replace('-', " ")),
        })
        .collect();
    all.join("; ")
}

fn met(grade: &str) -> &'static str {
    if grade == "yes" { "met" } else { "not met" }
}
