//! Owns the working out of one limb's volume from a record.

use super::excess::sign;
use super::limb_volume::{common_spacing, discs};
use super::row::{Row, RowMark};
use super::{
    CutOffs, Detectable, Excess, GirthPair, Graded, LimbVolume, Part, PartOfLimb, Segment, Setting,
    Uncompared, VisitVolume, VolumeNumbers,
};
use crate::anatomy::Limb;
use crate::record::{LimbRecord, Record, VolumeMethod};
use crate::rules::{ExcessMeasure, Rules};

/// Works out the volume of `limb`, one of the limbs of `record`, and compares it with the other side.
pub fn measure(record: &Record, limb: &LimbRecord, rules: &Rules) -> VisitVolume {
    let numbers = VolumeNumbers::of(rules);
    let (method, tape) = (record.volume_method, &numbers.tape);
    let row = Row::of(&limb.marks, record.limb, record.positions_from, tape);
    let other =
        record.other_marks(limb).map(|marks| Row::of(marks, record.limb, record.positions_from, tape));
    let measured = row.volume(method);
    let compared = other.as_ref().filter(|other| row.same_places(other));
    let other_volume = compared.and_then(|other| other.volume(method));
    let uncompared = match (&other, compared, measured.and(other_volume)) {
        (None, ..) => Some(Uncompared::NoOther),
        (Some(_), None, _) => Some(Uncompared::OtherMarks),
        (Some(_), Some(_), None) => Some(Uncompared::NoVolume),
        _ => None,
    };
    let excess_of = |one: LimbVolume, other: Option<LimbVolume>| {
        other.and_then(|other| Excess::of(record.affected, limb.side, one, other))
    };
    let excess = measured.and_then(|one| excess_of(one, other_volume));
    let sign = sign(record.affected, limb.side);
    let girths = pairs(&row.marks, other.as_ref().map(|other| other.marks.as_slice()), sign);
    let extremity = pairs(&row.extremity, other.as_ref().map(|other| other.extremity.as_slice()), sign);
    let grades = excess.map(|excess| grades(excess, &girths, record.limb, rules)).unwrap_or_default();
    let repeated = is_repeated(&row);
    VisitVolume {
        method,
        spacing_cm: common_spacing(&row.stations()),
        measured,
        other: other_volume,
        uncompared,
        excess,
        grades,
        cut_offs: excess.and_then(|excess| {
            CutOffs::of(record.limb, record.affected, record.dominance, excess.percent, rules)
        }),
        parts: parts(&row, compared, record.limb, method, excess_of),
        segments: segments(&row, compared, method, excess_of),
        girths,
        extremity,
        detectable: measured
            .map(|one| Setting::ALL.map(|setting| Detectable::of(one, repeated, setting, &numbers)).to_vec())
            .unwrap_or_default(),
        repeated,
    }
}

/// Whether every mark was read at least twice.
pub(super) fn is_repeated(row: &Row) -> bool {
    !row.marks.is_empty() && row.marks.iter().all(|mark| mark.repeats > 1)
}

fn pairs(marks: &[RowMark], other: Option<&[RowMark]>, sign: Option<f64>) -> Vec<GirthPair> {
    marks
        .iter()
        .map(|mark| {
            let other =
                other.and_then(|list| list.iter().find(|one| one.place == mark.place)).map(|one| one.girth);
            let difference = other.zip(sign).map(|(other, sign)| {
                let difference = mark.girth.tenths() - other.tenths();
                if sign < 0.0 { -difference } else { difference }
            });
            GirthPair {
                place: mark.place,
                at_cm: mark.station.at_cm,
                measured: mark.girth,
                other,
                difference_tenths: difference,
            }
        })
        .collect()
}

fn parts(
    row: &Row,
    other: Option<&Row>,
    limb: Limb,
    method: VolumeMethod,
    excess_of: impl Fn(LimbVolume, Option<LimbVolume>) -> Option<Excess>,
) -> Vec<Part> {
    let Some(halves) = row.joint(limb).and_then(|joint| row.split(joint, method)) else {
        return Vec::new();
    };
    let others = other
        .and_then(|other| other.split(other.joint(limb)?, method))
        .map_or([None, None], |halves| halves.map(Some));
    [PartOfLimb::Distal, PartOfLimb::Proximal]
        .into_iter()
        .zip(halves.into_iter().zip(others))
        .map(|(part, (measured, other))| Part { part, measured, other, excess: excess_of(measured, other) })
        .collect()
}

/// The segments' volumes, distal to proximal.
fn pieces(row: &Row, method: VolumeMethod) -> Option<Vec<LimbVolume>> {
    let stations = row.stations();
    match method {
        VolumeMethod::Frustum => stations.windows(2).map(super::frustum).collect(),
        VolumeMethod::Disc => {
            let height = common_spacing(&stations)?;
            Some(stations.iter().map(|one| discs(height, std::slice::from_ref(one), &[1.0])).collect())
        }
    }
}

fn segments(
    row: &Row,
    other: Option<&Row>,
    method: VolumeMethod,
    excess_of: impl Fn(LimbVolume, Option<LimbVolume>) -> Option<Excess>,
) -> Vec<Segment> {
    let others = other.and_then(|other| pieces(other, method));
    let reach = usize::from(method == VolumeMethod::Frustum);
    pieces(row, method)
        .unwrap_or_default()
        .into_iter()
        .enumerate()
        .filter_map(|(at, measured)| {
            let other = others.as_ref().and_then(|list| list.get(at)).copied();
            Some(Segment {
                from: row.marks.get(at)?.place,
                to: row.marks.get(at + reach)?.place,
                measured,
                other,
                excess: excess_of(measured, other),
            })
        })
        .collect()
}

fn grades(excess: Excess, girths: &[GirthPair], limb: Limb, rules: &Rules) -> Vec<Graded> {
    let widest = girths.iter().filter_map(|pair| pair.difference_tenths).max().unwrap_or_default();
    let widest_cm = f64::from(i32::try_from(widest).unwrap_or_default()) / 100.0;
    rules
        .severity_sets
        .iter()
        .filter(|set| set.limbs.include(limb))
        .map(|set| {
            let value = match set.of {
                ExcessMeasure::Percent => excess.percent,
                ExcessMeasure::Millilitres => excess.ml,
                ExcessMeasure::GirthDifference => widest_cm,
            };
            let (set, grade, source) = (set.set.clone(), set.grade(value).to_owned(), set.source.clone());
            Graded { set, grade, source }
        })
        .collect()
}
