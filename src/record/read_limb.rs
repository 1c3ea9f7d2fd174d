//! Owns the reading of what a record states of one limb: at the top of the file, or in the block of a side.

use std::collections::BTreeMap;

use super::read_answers::{read_cleared, read_confirmed, read_observed, read_screening};
use super::read_arterial::read_arterial;
use super::read_marks::read_marks;
use super::read_pressure::read_prescribed;
use super::read_use::{read_dates, read_garments, read_readings};
use super::{Cleared, LengthName, LimbRecord, Mark};
use crate::anatomy::{Between, Landmark, Limb, Side};
use crate::input::{Fields, Item, Spot};
use crate::quantity::Span;

/// Keys that belong to a side: at the top of a record of one limb, in `left:` and `right:` under `limb: both`.
const SIDED: [&str; 6] = ["marks", "lengths", "observed", "arterial", "readings", "garments"];

/// Keys of the top that are read alike for one limb and for both.
pub(super) struct Top {
    /// Findings cleared.
    pub(super) cleared: Vec<Cleared>,
}

impl Top {
    pub(super) fn read(fields: &Fields<'_>, limb: Limb) -> Self {
        let list = fields.blank_or("cleared").and_then(|one| one.list()).unwrap_or_default();
        Self { cleared: list.iter().filter_map(|one| read_cleared(one, limb)).collect() }
    }
}

/// The one limb of a record, its keys at the top of the file.
pub(super) fn read_one(fields: &Fields<'_>, limb: Limb, side: Side) -> Option<LimbRecord> {
    for key in ["left", "right"] {
        if let Some(block) = fields.optional(key) {
            block.refuse(format!(
                "stands only under `limb: both {}s`; write its keys at the top",
                limb.name()
            ));
        }
    }
    let other_limb = fields.optional("other_limb").map(|one| read_other(&one, limb));
    let mut read = read_sided(fields, limb, side)?;
    if let Some(other) = other_limb {
        read.other_limb = Some(other?);
    }
    Some(read)
}

/// Both limbs of a record, each in the block of its side; the left one first.
pub(super) fn read_both(fields: &Fields<'_>, limb: Limb) -> Option<Vec<LimbRecord>> {
    if let Some(other) = fields.optional("other_limb") {
        other.refuse(format!("each {} has its own block; write `left:` and `right:`", limb.name()));
    }
    for key in SIDED {
        if let Some(item) = fields.optional(key) {
            item.refuse(format!("belongs to one {}; write it under `left:` or `right:`", limb.name()));
        }
    }
    let mut limbs = Vec::new();
    for (key, side) in [("left", Side::Left), ("right", Side::Right)] {
        let example = format!("the block of the {key} {}, as `{key}: {{marks: […]}}`", limb.name());
        let block = fields.required(key, &example).and_then(|one| one.fields());
        limbs.push(block.and_then(|block| {
            let mut read = read_sided(&block, limb, side);
            let prescribed = block.optional("prescribed").and_then(|one| read_prescribed(&one));
            let screening = block.blank_or("screening").and_then(|one| read_screening(&one));
            let confirmed = block.blank_or("confirmed").and_then(|one| read_confirmed(&one, limb));
            let cleared = Top::read(&block, limb).cleared;
            let infections = block.blank_or("infections").and_then(|one| read_dates(&one));
            block.finish();
            if let Some(read) = &mut read {
                read.prescribed = prescribed;
                read.screening = screening.unwrap_or_default();
                read.confirmed = confirmed.unwrap_or_default();
                read.cleared = cleared;
                read.infections = infections.unwrap_or_default();
            }
            read
        }));
    }
    limbs.into_iter().collect()
}

fn read_other(item: &Item<'_>, limb: Limb) -> Option<Vec<Mark>> {
    let block = item.fields()?;
    let marks = read_marks(&block, limb);
    block.finish();
    marks
}

/// The keys of a side.
fn read_sided(fields: &Fields<'_>, limb: Limb, side: Side) -> Option<LimbRecord> {
    let marks = read_marks(fields, limb);
    let lengths = fields.blank_or("lengths").and_then(|one| read_lengths(&one, limb));
    let observed = fields.blank_or("observed").and_then(|one| read_observed(&one, limb));
    let arterial = fields.blank_or("arterial").and_then(|one| read_arterial(&one));
    let readings = fields.blank_or("readings").and_then(|one| read_readings(&one, limb));
    let garments = fields.blank_or("garments").and_then(|one| read_garments(&one));
    Some(LimbRecord {
        side,
        marks: marks?,
        other_limb: None,
        lengths: lengths.unwrap_or_default(),
        observed: observed.unwrap_or_default(),
        prescribed: None,
        screening: super::Screening::default(),
        arterial,
        confirmed: Vec::new(),
        cleared: Vec::new(),
        readings: readings.unwrap_or_default(),
        garments: garments.unwrap_or_default(),
        infections: Vec::new(),
    })
}

fn read_lengths(item: &Item<'_>, limb: Limb) -> Option<BTreeMap<LengthName, (Span, Spot)>> {
    let mut lengths = BTreeMap::new();
    for (name, spot, value) in item.fields()?.each() {
        let Some(length) = LengthName::parse(limb, &name) else {
            let proximal = Landmark::of(limb).last().map_or("", |one| one.name());
            let floor = if limb == Limb::Leg { ", or from the floor, as `floor to below-knee`" } else { "" };
            let what = format!(
                "`{name}` is no stretch of the {}; write two landmarks from {} toward the trunk, as `{} to {proximal}`{floor}",
                limb.name(),
                limb.extremity(),
                limb.reference().name(),
            );
            item.reader().raise(spot, item.field_name(), what);
            continue;
        };
        if let Some(span) = value.span()
            && lengths.insert(length, (span, value.spot())).is_some()
        {
            let what = format!("`{}` stands twice, as words and letters; keep one", length.name());
            item.reader().raise(spot, item.field_name(), what);
        }
    }
    Some(lengths)
}

impl LengthName {
    /// Reads the heading of a table: `Wrist to axilla`, `floor to below the knee`, `wrist_to_axilla`.
    pub fn of_heading(limb: Limb, text: &str) -> Option<Self> {
        let words = text.to_lowercase().replace('_', " ");
        let (from, to) = words.split_once(" to ")?;
        let mark = |text: &str| Landmark::of_heading(limb, text);
        if from.trim() == "floor" {
            return (limb == Limb::Leg).then(|| mark(to)).flatten().map(Self::FromFloor);
        }
        Self::parse(limb, &format!("{} to {}", mark(from)?.name(), mark(to)?.name()))
    }

    /// Whether a heading names a length at all.
    pub fn is_heading(text: &str) -> bool {
        text.to_lowercase().replace('_', " ").contains(" to ")
    }

    /// Reads `wrist to axilla`, or on a leg `floor to below-knee`; letters serve as landmarks.
    pub fn parse(limb: Limb, text: &str) -> Option<Self> {
        match text.trim().strip_prefix("floor to ") {
            Some(to) if limb == Limb::Leg => Landmark::parse(limb, to).map(Self::FromFloor),
            Some(_) => None,
            None => Between::parse(limb, text).map(Self::Between),
        }
    }
}
