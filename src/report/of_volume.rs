//! Owns how a visit's volume becomes its block.

use super::{DifferenceBlock, Figure, GradeBlock, PartBlock, VolumeBlock};
use crate::anatomy::Limb;
use crate::assessment::part_name;
use crate::record::VolumeMethod;
use crate::volume::{CutOffGrade, CutOffs, LimbVolume, Part, Place, Uncompared, VisitVolume};
use crate::words;

/// A mark as printed: `wrist (C)`, `at 12 cm`.
pub(super) fn place_words(place: Place) -> String {
    match place {
        Place::Landmark(landmark) => words::label(landmark),
        Place::At(position) => format!("at {} cm", words::cm_short(position.tenths())),
    }
}

/// A part as printed: `forearm part`.
pub(super) fn part_words(limb: Limb, part: &Part) -> String {
    format!("{} part", part_name(limb, part.part))
}

/// A share as printed, to a tenth of a per cent.
pub(super) fn percent(value: f64) -> Option<Figure> {
    Figure::new(value, 1)
}

/// A volume as printed.
pub(super) fn ml(volume: Option<LimbVolume>) -> Option<Figure> {
    volume.and_then(|one| Figure::ml(one.ml))
}

impl VolumeBlock {
    /// Of the volume of a limb at one visit.
    pub fn of(limb: Limb, volume: &VisitVolume, tells_pair: bool) -> Self {
        let spacing = volume.spacing_cm.and_then(|cm| Figure::new(cm, 1)).map(|mut figure| {
            figure.text = words::trimmed(figure.value, 1);
            figure
        });
        let differences = volume.extremity.iter().chain(&volume.girths).filter_map(|pair| {
            let difference_cm = Figure::cm(pair.difference_tenths?);
            Some(DifferenceBlock { mark: place_words(pair.place), difference_cm })
        });
        Self {
            method: volume.method.word(),
            spacing_cm: spacing,
            measured_ml: ml(volume.measured),
            other_ml: ml(volume.other),
            excess_ml: volume.excess.and_then(|one| Figure::ml(one.ml)),
            excess_percent: volume.excess.and_then(|one| percent(one.percent)),
            sd_ml: volume.sd_ml().and_then(Figure::ml),
            grades: volume
                .grades
                .iter()
                .map(|one| GradeBlock { set: one.set.clone(), grade: one.grade.clone() })
                .collect(),
            parts: volume
                .parts
                .iter()
                .map(|part| PartBlock {
                    part: part_words(limb, part),
                    measured_ml: ml(Some(part.measured)),
                    other_ml: ml(part.other),
                    excess_percent: part.excess.and_then(|one| percent(one.percent)),
                })
                .collect(),
            differences: differences.collect(),
            not_compared: not_compared(volume),
            tells_pair,
            words: graded_words(volume),
        }
    }
}

/// Why both limbs are not compared; none where nothing was to be compared.
fn not_compared(volume: &VisitVolume) -> Option<String> {
    let said = match volume.uncompared? {
        Uncompared::NoOther => return None,
        Uncompared::OtherMarks => "the marks of both limbs are not at the same landmarks",
        Uncompared::NoVolume if volume.method == VolumeMethod::Disc && volume.spacing_cm.is_none() => {
            "discs need marks at one spacing; take `volume_method: frustum`"
        }
        Uncompared::NoVolume => "a volume needs two marks of the limb",
    };
    Some(said.to_owned())
}

/// `ISL: minimal; CTCAE v3: grade 2; 200 mL: met`.
fn graded_words(volume: &VisitVolume) -> String {
    let mut all: Vec<String> = volume
        .grades
        .iter()
        .map(|one| format!("{}: {}", set_words(&one.set), grade_words(&one.grade)))
        .collect();
    all.extend(
        volume.cut_offs.as_ref().map(|one| format!("{}: {}", cut_off_name(one), cut_off_words(one.grade))),
    );
    all.join("; ")
}

/// A grade as printed.
pub(super) fn grade_words(grade: &str) -> String {
    match grade {
        "yes" => "met".to_owned(),
        "no" => "not met".to_owned(),
        number if number.bytes().all(|byte| byte.is_ascii_digit()) => format!("grade {number}"),
        other => other.to_owned(),
    }
}

/// A set's name as printed.
pub(super) fn set_words(set: &str) -> String {
    match set {
        "isl" => "ISL".to_owned(),
        "ctcae-v3" => "CTCAE v3".to_owned(),
        "200-ml" => "200 mL".to_owned(),
        "10-percent" => "10 %".to_owned(),
        "2-cm" => "2 cm".to_owned(),
        other => other.to_owned(),
    }
}

/// The two cut-offs as printed.
pub(super) fn cut_off_name(one: &CutOffs) -> String {
    let limb = match one.dominant {
        None => "leg",
        Some(true) => "dominant arm",
        Some(false) => "other arm",
    };
    let (lower, upper) = (words::trimmed(one.lower_percent, 1), words::trimmed(one.upper_percent, 1));
    format!("body scans, {limb}, {lower} and {upper} %")
}

/// Where an excess lies between the two, as printed.
pub(super) fn cut_off_words(grade: CutOffGrade) -> &'static str {
    match grade {
        CutOffGrade::NoneOrMild => "none to mild",
        CutOffGrade::Moderate => "moderate",
        CutOffGrade::Severe => "severe",
    }
}
