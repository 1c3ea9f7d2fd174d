//! Records made in code, for rooms below the reader.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use jiff::civil::Date;
use tapeline::anatomy::{Landmark, Limb, Side};
use tapeline::input::{Spot, Text};
use tapeline::quantity::{Girth, Position};
use tapeline::record::{
    Affected, AgeBand, Allergies, Cause, LimbRecord, Mark, Observed, Origin, Record, RecordSpots, Screening,
    VolumeMethod,
};
use tapeline::rules::{Rules, read_shipped_rules};

/// Read once; a test that changes its copy changes no other's.
pub fn rules() -> Rules {
    static SHIPPED: LazyLock<Rules> = LazyLock::new(|| read_shipped_rules("default").unwrap());
    SHIPPED.clone()
}

pub fn spot() -> Spot {
    Spot(0)
}

pub fn text(words: &str) -> Text {
    Text::new(words).unwrap()
}

pub fn day(date: &str) -> Date {
    date.parse().unwrap()
}

pub fn girth(cm: f64) -> Girth {
    Girth::from_tenths((cm * 100.0).round() as i64).unwrap()
}

pub fn position(cm: f64) -> Position {
    Position::from_tenths((cm * 100.0).round() as i64).unwrap()
}

pub fn mark(landmark: Option<Landmark>, at: f64, cm: f64) -> Mark {
    let (at, first) = (position(at), girth(cm));
    Mark { landmark, at, first, again: Vec::new(), calipers: None, spot: spot() }
}

/// Marks every `step` cm from zero; the first is the reference of the limb.
pub fn serial(limb: Limb, girths: &[f64], step: f64) -> Vec<Mark> {
    let named = |at: usize| (at == 0).then_some(limb.reference());
    girths.iter().enumerate().map(|(at, cm)| mark(named(at), at as f64 * step, *cm)).collect()
}

pub fn limb(side: Side, marks: Vec<Mark>, other: Option<Vec<Mark>>) -> LimbRecord {
    LimbRecord {
        side,
        marks,
        other_limb: other,
        lengths: BTreeMap::new(),
        observed: Observed::default(),
        prescribed: None,
        screening: Screening::default(),
        arterial: None,
        confirmed: Vec::new(),
        cleared: Vec::new(),
        readings: Vec::new(),
        garments: Vec::new(),
        infections: Vec::new(),
    }
}

/// A visit of the left limb, affected.
pub fn record(on: &str, kind: Limb, marks: Vec<Mark>, other: Option<Vec<Mark>>) -> Record {
    let positions_from = if kind == Limb::Arm { Origin::Wrist } else { Origin::Floor };
    Record {
        file: format!("{on}.yaml"),
        client: text("L-0417"),
        measured_on: day(on),
        measured_at: None,
        measured_by: None,
        age_band: AgeBand::Adult,
        limb: kind,
        limbs: vec![limb(Side::Left, marks, other)],
        affected: Affected::One(Side::Left),
        cause: Cause::default(),
        posture: None,
        positions_from,
        prescribed: None,
        screening: Screening::default(),
        allergies: Allergies::default(),
        confirmed: Vec::new(),
        cleared: Vec::new(),
        infections: Vec::new(),
        dominance: None,
        baseline: false,
        shown: Vec::new(),
        weight_kg: None,
        volume_method: VolumeMethod::Frustum,
        spots: RecordSpots { client: spot(), limb: spot(), measured_on: spot(), affected: spot() },
    }
}

pub fn near(found: f64, wanted: f64, relative: f64) {
    assert!((found - wanted).abs() <= relative * wanted.abs(), "{found}, wanted {wanted}");
}
