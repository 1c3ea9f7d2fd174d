//! Owns the comparison of the measured limb with the other one.

use super::limb_volume::common_spacing;
use super::{LimbVolume, Station, disc, frustum};
use crate::record::{Affected, Mark, Record, VolumeMethod, limb_marks};
use crate::rules::{ExcessMeasure, Rules};

/// Both limbs' volumes and what lies between them.
#[derive(Clone, Debug)]
pub struct Comparison {
    /// How the volumes were worked out.
    pub method: VolumeMethod,
    /// Spacing of the marks where it is the same throughout, cm.
    pub spacing_cm: Option<f64>,
    /// The measured limb, mL; none where it cannot be worked out.
    pub measured_ml: Option<f64>,
    /// The other limb, mL.
    pub other_ml: Option<f64>,
    /// Affected minus other limb, mL; none where both or neither are affected, or the marks differ.
    pub excess_ml: Option<f64>,
    /// Excess in % of the limb that is not affected.
    pub excess_percent: Option<f64>,
    /// SD of the excess by tape error alone, mL; none without an excess.
    pub sd_ml: Option<f64>,
    /// Grade of the excess in each severity set, by name.
    pub severity: Vec<(String, String)>,
    /// Distal and proximal part, split at the joint where a mark stands there.
    pub parts: Vec<Part>,
    /// Whether both limbs were measured at the same positions.
    pub same_positions: bool,
}

/// One part of the limb.
#[derive(Clone, Debug)]
pub struct Part {
    /// `distal` or `proximal`.
    pub part: &'static str,
    /// The measured limb's part, mL.
    pub measured_ml: f64,
    /// The other limb's part, mL.
    pub other_ml: f64,
    /// Excess of the part, mL.
    pub excess_ml: Option<f64>,
    /// Excess of the part, % of the part that is not affected.
    pub excess_percent: Option<f64>,
}

/// Compares both limbs; none when the other limb was not measured.
pub fn compare(record: &Record, rules: &Rules) -> Option<Comparison> {
    let other_marks = record.other_limb.as_ref()?;
    let measured_marks = limb_marks(&record.marks, record.limb, record.positions_from);
    let other_marks = limb_marks(other_marks, record.limb, record.positions_from);
    let same_positions = measured_marks.len() == other_marks.len()
        && measured_marks.iter().zip(&other_marks).all(|(one, other)| one.at == other.at);
    let (measured, other) = (stations(&measured_marks), stations(&other_marks));
    let volume = |stations: &[Station]| match record.volume_method {
        VolumeMethod::Frustum => frustum(stations),
        VolumeMethod::Disc => disc(stations),
    };
    let (measured_volume, other_volume) = (volume(&measured), volume(&other));
    let both = measured_volume.zip(other_volume).filter(|_| same_positions);
    let excess = both.and_then(|(one, other)| excess(record, one, other));
    let parts = joint_index(&measured_marks, record)
        .filter(|_| same_positions && record.volume_method == VolumeMethod::Frustum)
        .map(|joint| {
            let distal = |list: &[Station]| frustum(list.get(..=joint).unwrap_or_default());
            let proximal = |list: &[Station]| frustum(list.get(joint..).unwrap_or_default());
            [
                ("distal", distal(&measured), distal(&other)),
                ("proximal", proximal(&measured), proximal(&other)),
            ]
            .into_iter()
            .filter_map(|(name, one, other)| Some(part(record, name, one?, other?)))
            .collect()
        })
        .unwrap_or_default();
    let severity = match excess {
        None => Vec::new(),
        Some((ml, percent)) => {
            let widest = largest_difference(record, &measured_marks, &other_marks);
            rules
                .severity_sets
                .iter()
                .map(|set| {
                    let value = match set.of {
                        ExcessMeasure::Percent => percent,
                        ExcessMeasure::Millilitres => ml,
                        ExcessMeasure::GirthDifference => widest,
                    };
                    (set.set.clone(), set.grade(value).to_owned())
                })
                .collect()
        }
    };
    Some(Comparison {
        method: record.volume_method,
        spacing_cm: common_spacing(&measured),
        measured_ml: measured_volume.map(|one| one.ml),
        other_ml: other_volume.map(|one| one.ml),
        excess_ml: excess.map(|(ml, _)| ml),
        excess_percent: excess.map(|(_, percent)| percent),
        sd_ml: excess.and(both).map(|(one, other)| (one.variance + other.variance).sqrt()),
        severity,
        parts,
        same_positions,
    })
}

fn stations(marks: &[&Mark]) -> Vec<Station> {
    marks
        .iter()
        .map(|mark| Station { at_cm: mark.at.cm(), girth_cm: mark.girth().cm(), sd_cm: mark.sd_cm() })
        .collect()
}

/// +1 where the measured limb is the affected one, −1 where the other is; none where an excess has
/// no meaning.
fn sign(record: &Record) -> Option<f64> {
    match record.affected {
        Affected::One(side) if side == record.side => Some(1.0),
        Affected::One(_) => Some(-1.0),
        Affected::Both | Affected::Neither => None,
    }
}

fn excess(record: &Record, measured: LimbVolume, other: LimbVolume) -> Option<(f64, f64)> {
    let sign = sign(record)?;
    let base = if sign > 0.0 { other.ml } else { measured.ml };
    let ml = sign * (measured.ml - other.ml);
    (base > 0.0).then(|| (ml, 100.0 * ml / base))
}

fn part(record: &Record, name: &'static str, measured: LimbVolume, other: LimbVolume) -> Part {
    let excess = excess(record, measured, other);
    Part {
        part: name,
        measured_ml: measured.ml,
        other_ml: other.ml,
        excess_ml: excess.map(|(ml, _)| ml),
        excess_percent: excess.map(|(_, percent)| percent),
    }
}

fn joint_index(marks: &[&Mark], record: &Record) -> Option<usize> {
    marks
        .iter()
        .position(|mark| mark.landmark == Some(record.limb.joint()))
        .filter(|at| *at > 0 && at + 1 < marks.len())
}

/// Largest girth difference at a common mark, affected minus other, cm, exact to 0.1 mm.
fn largest_difference(record: &Record, measured: &[&Mark], other: &[&Mark]) -> f64 {
    let flip = if sign(record) == Some(-1.0) { -1 } else { 1 };
    let differences =
        measured.iter().zip(other).map(|(one, other)| flip * (one.girth().tenths() - other.girth().tenths()));
    let widest = differences.max().unwrap_or_default();
    f64::from(i32::try_from(widest).unwrap_or_default()) / 100.0
}
