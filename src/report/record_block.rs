//! Owns the record's part of the report.

use serde::Serialize;

use super::Figure;
use crate::assessment::OpenRecord;
use crate::quantity::mmhg;
use crate::record::{self, Affected, AgeBand, Wanted};

/// The record.
#[derive(Clone, Debug, Serialize)]
pub struct Record {
    /// The clinic's reference.
    pub client: String,
    /// `arm` or `leg`.
    pub limb: &'static str,
    /// `left` or `right`.
    pub side: &'static str,
    /// The day of measuring.
    pub measured: String,
    /// The time of measuring.
    pub measured_at: Option<String>,
    /// Who measured.
    pub measured_by: Option<String>,
    /// `adult` or `child`.
    pub age_band: &'static str,
    /// `left`, `right`, `both` or `none`.
    pub affected: &'static str,
    /// Posture.
    pub posture: Option<String>,
    /// The zero of positions.
    pub positions_from: &'static str,
    /// The marks, distal to proximal.
    pub marks: Vec<RecordMark>,
    /// The other limb's marks.
    pub other_limb: Option<Vec<RecordMark>>,
    /// Lengths.
    pub lengths: Vec<Length>,
    /// Weight.
    pub weight_kg: Option<Figure>,
    /// Home routines taught.
    pub taught: Vec<String>,
    /// When the present garment was handed out.
    pub garment_given: Option<String>,
}

/// A mark as measured.
#[derive(Clone, Debug, Serialize)]
pub struct RecordMark {
    /// The landmark.
    pub landmark: Option<&'static str>,
    /// As printed: `wrist (C)`, or `mark at 18 cm`.
    pub label: String,
    /// Where.
    pub at_cm: Option<Figure>,
    /// The mean girth.
    pub girth_cm: Option<Figure>,
    /// Every reading.
    pub readings_cm: Vec<Figure>,
}

/// A length.
#[derive(Clone, Debug, Serialize)]
pub struct Length {
    /// `wrist to axilla`.
    pub between: String,
    /// The length.
    pub length_cm: Option<Figure>,
}

/// What was prescribed.
#[derive(Clone, Debug, Serialize)]
pub struct Prescribed {
    /// The scheme's id.
    pub scheme: Option<String>,
    /// The class.
    pub class: Option<String>,
    /// The range asked for, low.
    pub low_mmhg: Option<Figure>,
    /// The range asked for, high.
    pub high_mmhg: Option<Figure>,
    /// The style.
    pub style: Option<String>,
    /// Who prescribed.
    pub by: Option<String>,
    /// The pressure in words.
    pub words: String,
}

pub(super) fn record(record: &record::Record) -> Record {
    let marks = |marks: &[record::Mark]| marks.iter().map(mark).collect::<Vec<_>>();
    Record {
        client: record.client.clone(),
        limb: record.limb.name(),
        side: record.side.name(),
        measured: record.measured.to_string(),
        measured_at: record.measured_at.clone(),
        measured_by: record.measured_by.clone(),
        age_band: match record.age_band {
            AgeBand::Adult => "adult",
            AgeBand::Child => "child",
        },
        affected: match record.affected {
            Affected::One(side) => side.name(),
            Affected::Both => "both",
            Affected::Neither => "none",
        },
        posture: record.posture.clone(),
        positions_from: record.positions_from.name(),
        marks: marks(&record.marks),
        other_limb: record.other_limb.as_deref().map(marks),
        lengths: record
            .lengths
            .iter()
            .map(|(between, span)| Length { between: between.name(), length_cm: Figure::cm(span.cm()) })
            .collect(),
        weight_kg: record.weight_kg.and_then(|weight| Figure::new(weight, 1)),
        taught: record.taught.clone(),
        garment_given: record.garment_given.map(|date| date.to_string()),
    }
}

fn mark(mark: &record::Mark) -> RecordMark {
    let readings = std::iter::once(mark.first).chain(mark.again.iter().copied());
    RecordMark {
        landmark: mark.landmark.map(crate::anatomy::Landmark::name),
        label: mark
            .landmark
            .map_or_else(|| format!("mark at {} cm", mark.at.cm()), crate::anatomy::Landmark::label),
        at_cm: Figure::cm(mark.at.cm()),
        girth_cm: Figure::cm(mark.girth().cm()),
        readings_cm: readings.filter_map(|girth| Figure::cm(girth.cm())).collect(),
    }
}

pub(super) fn prescribed(open: &OpenRecord) -> Option<Prescribed> {
    let prescribed = open.record.prescribed.as_ref()?;
    let band = |class: &str| open.prescribed_scheme.as_ref().and_then(|scheme| scheme.class(class).cloned());
    let (scheme, class, low, high, words) = match &prescribed.wanted {
        Some(Wanted::Class { scheme, class }) => {
            let band = band(&class.text);
            let label = open.prescribed_scheme.as_ref().map_or(scheme.text.as_str(), |scheme| &scheme.label);
            let spoken = band.as_ref().map(|band| format!(", {}", band.spoken())).unwrap_or_default();
            let words = format!("class {} of {label}{spoken}", class.text);
            let ends = band.map_or((None, None), |band| (band.low, band.high));
            (Some(scheme.text.clone()), Some(class.text.clone()), ends.0, ends.1, words)
        }
        Some(Wanted::Range { low, high }) => {
            let words = format!("{:.0} to {:.0} mmHg", mmhg(*low), mmhg(*high));
            (None, None, Some(mmhg(*low)), Some(mmhg(*high)), words)
        }
        None => (None, None, None, None, "no pressure stated".to_owned()),
    };
    Some(Prescribed {
        scheme,
        class,
        low_mmhg: low.and_then(Figure::mmhg),
        high_mmhg: high.and_then(Figure::mmhg),
        style: prescribed.style.clone(),
        by: prescribed.by.clone(),
        words,
    })
}
