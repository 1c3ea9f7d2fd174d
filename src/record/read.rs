//! Owns the reading of a record file; every problem in it is raised in one run.

use std::collections::BTreeMap;

use super::read_marks::{read_landmark, read_marks};
use super::{
    Affected, AgeBand, Arterial, Cleared, Clinical, Mark, Observed, Origin, Prescribed, Reading, Record,
    RecordSpots, ScreeningBlock, VolumeMethod, Wanted,
};
use crate::anatomy::{Between, Landmark, Limb, Side};
use crate::input::{Fields, Item, Named, Reader};
use crate::quantity::{
    Dimension, PASCAL_PER_MMHG, Pressure, QuantityFault, Span, mmhg, pressure_from_mmhg, range_ends,
    read_quantity,
};

/// Reads a record; none when the reader has raised problems that leave no record to look at.
pub fn read_record(reader: &Reader) -> Option<Record> {
    let fields = reader.fields("record/1")?;
    let client = fields
        .required("client", "the clinic's reference code, as `client: K-0417`")
        .and_then(|one| one.text());
    let measured = fields
        .required("measured", "the date, as `measured: 2026-03-14`")
        .and_then(|one| one.date_and_time());
    let measured_by = fields.optional("measured_by").and_then(|one| one.text());
    let age_band = fields
        .optional("age_band")
        .map(|one| one.word(&[("adult", AgeBand::Adult), ("child", AgeBand::Child)]));
    let limb_item = fields.required("limb", "side and limb, as `limb: left arm`");
    let limb = limb_item.as_ref().and_then(read_limb);
    let affected =
        fields.required("affected", "the affected side: left, right, both or none").and_then(|one| {
            one.word(&[
                ("left", Affected::One(Side::Left)),
                ("right", Affected::One(Side::Right)),
                ("both", Affected::Both),
                ("none", Affected::Neither),
            ])
        });
    let posture = fields.optional("posture").and_then(|one| one.text());
    // Marks and landmarks can only be read once the limb is known; an arm is assumed for no other purpose.
    let kind = limb.map_or_else(|| guess_limb(&fields), |(_, limb)| limb);
    let positions_from = fields
        .required("positions_from", "the zero of `at`: wrist, styloid, fingertip, heel or floor")
        .and_then(|one| read_origin(&one, kind));
    let marks = read_marks(&fields, kind);
    let other_limb = fields.optional("other_limb").map(|one| {
        let block = one.fields()?;
        let marks = read_marks(&block, kind);
        block.finish();
        marks
    });
    let lengths = fields.optional("lengths").and_then(|one| read_lengths(&one, kind)).unwrap_or_default();
    let observed = fields.blank_or("observed").and_then(|one| read_observed(&one)).unwrap_or_default();
    let prescribed = fields.optional("prescribed").and_then(|one| read_prescribed(&one));
    let screening = fields.blank_or("screening").and_then(|one| read_screening(&one)).unwrap_or_default();
    let arterial = fields.optional("arterial").and_then(|one| read_arterial(&one));
    let allergies = fields.blank_or("allergies").and_then(|one| read_allergies(&one));
    let confirmed = fields.optional("confirmed").and_then(|one| one.list()).unwrap_or_default();
    let confirmed: Vec<Landmark> = confirmed.iter().filter_map(|one| read_landmark(one, kind)).collect();
    let cleared = fields.optional("cleared").and_then(|one| one.list()).unwrap_or_default();
    let cleared: Vec<Cleared> = cleared.iter().filter_map(read_cleared).collect();
    let readings = fields.optional("readings").and_then(|one| one.list()).unwrap_or_default();
    let readings: Vec<Reading> = readings.iter().filter_map(|one| read_reading(one, kind)).collect();
    let weight_kg = fields.optional("weight").and_then(|one| {
        let kilograms = one.not_negative(Dimension::Mass)?;
        // House rule: outside 1 to 500 kg is a slip of the fingers, not a body weight.
        let plausible = (1.0..=500.0).contains(&kilograms);
        if !plausible {
            one.refuse("is no body weight from 1 to 500 kg; check number and unit");
        }
        plausible.then_some(kilograms)
    });
    let volume_method = fields
        .optional("volume_method")
        .and_then(|one| one.word(&[("frustum", VolumeMethod::Frustum), ("disc", VolumeMethod::Disc)]));
    let taught = fields.optional("taught").and_then(|one| one.names()).unwrap_or_default();
    let garment_given = fields.optional("garment_given").and_then(|one| one.date());
    fields.finish();
    let spots = RecordSpots {
        client: fields.spot_of("client"),
        limb: fields.spot_of("limb"),
        measured: fields.spot_of("measured"),
    };

    let (measured, measured_at) = measured?;
    let (side, limb) = limb?;
    Some(Record {
        client: client?,
        measured,
        measured_at,
        measured_by,
        age_band: age_band.map_or(Some(AgeBand::Adult), |one| one)?,
        limb,
        side,
        affected: affected?,
        posture,
        positions_from: positions_from?,
        marks: marks?,
        other_limb: other_limb.map_or(Some(None), |marks| marks.map(Some))?,
        lengths,
        observed,
        prescribed,
        screening,
        arterial,
        allergies: allergies.map(|list| list.into_iter().map(|one| one.text).collect()),
        confirmed,
        cleared,
        readings,
        weight_kg,
        volume_method: volume_method.unwrap_or(VolumeMethod::Frustum),
        taught: taught.into_iter().map(|one| one.text).collect(),
        garment_given,
        spots,
    })
}

fn read_limb(item: &Item<'_>) -> Option<(Side, Limb)> {
    let text = item.text()?;
    let found = text.split_once(' ').and_then(|(side, limb)| Some((Side::parse(side)?, Limb::parse(limb)?)));
    if found.is_none() {
        item.refuse(format!("`{text}` is no limb; write `left arm`, `right arm`, `left leg` or `right leg`"));
    }
    found
}

/// Which limb the marks speak of while `limb:` itself is missing or wrong, so that its fault alone is told.
fn guess_limb(fields: &Fields<'_>) -> Limb {
    let leg = fields.each().any(|(key, _, item)| {
        key == "positions_from" && item.text().is_some_and(|text| text == "heel" || text == "floor")
    });
    if leg { Limb::Leg } else { Limb::Arm }
}

fn read_origin(item: &Item<'_>, limb: Limb) -> Option<Origin> {
    let all = [Origin::Wrist, Origin::Styloid, Origin::Fingertip, Origin::Heel, Origin::Floor];
    let words: Vec<(&str, Origin)> = all.iter().map(|one| (one.name(), *one)).collect();
    let origin = item.word(&words)?;
    if origin.limb() != limb {
        let own: Vec<&str> = all.iter().filter(|one| one.limb() == limb).map(|one| one.name()).collect();
        item.refuse(format!(
            "`{}` is no origin on the {}; accepted: {}",
            origin.name(),
            limb.name(),
            own.join(", ")
        ));
        return None;
    }
    Some(origin)
}

fn read_lengths(item: &Item<'_>, limb: Limb) -> Option<BTreeMap<Between, Span>> {
    let mut lengths = BTreeMap::new();
    for (name, spot, value) in item.fields()?.each() {
        let Some(between) = Between::parse(limb, &name) else {
            item.reader().raise(spot, "lengths", format!("`{name}` is no stretch of the {}; write two landmarks from {} toward the trunk, as `{} to {}`", limb.name(), limb.extremity(), limb.reference().name(), Landmark::of(limb).last().map_or("", |one| one.name())));
            continue;
        };
        if let Some(span) = value.span()
            && lengths.insert(between, span).is_some()
        {
            let what = format!("`{}` stands twice, as words and letters; keep one", between.name());
            item.reader().raise(spot, "lengths", what);
        }
    }
    Some(lengths)
}

fn read_observed(item: &Item<'_>) -> Option<Observed> {
    let fields = item.fields()?;
    let read = |key| fields.blank_or(key).and_then(|one| one.yes_no_unknown());
    let observed = Observed {
        hand_swelling: read("hand_swelling"),
        pitting: read("pitting"),
        folds: read("folds"),
        distortion: read("distortion"),
    };
    fields.finish();
    Some(observed)
}

/// Materials; a word that answers the question is no material.
fn read_allergies(item: &Item<'_>) -> Option<Vec<Named>> {
    if !item.is_list() {
        item.refuse_kind("write a list, as `[latex]`, or `[]` when asked and there is none");
        return None;
    }
    let names = item.names()?;
    for one in &names {
        let word = one.text.to_lowercase();
        if ["none", "no", "nil", "yes"].contains(&word.as_str()) {
            item.reader().raise(
                one.spot,
                "allergies",
                format!(
                    "`{}` is no material; name the materials, or write `[]` when there is none",
                    one.text
                ),
            );
        } else if word == "unknown" {
            item.reader().raise(
                one.spot,
                "allergies",
                "`unknown` is no material; take the key out, and the question stays open",
            );
        }
    }
    Some(names)
}

fn read_prescribed(item: &Item<'_>) -> Option<Prescribed> {
    let fields = item.fields()?;
    let scheme = fields.optional("scheme").and_then(|one| one.named());
    let class = fields.optional("class").and_then(|one| one.named());
    let range = fields.optional("range");
    let style = fields.optional("style").and_then(|one| one.text());
    let by = fields.optional("by").and_then(|one| one.text());
    fields.finish();
    let wanted = match (scheme, class, &range) {
        (Some(scheme), Some(class), None) => Some(Wanted::Class { scheme, class }),
        (None, None, Some(range)) => Some(read_pressure_range(range)?),
        (None, None, None) => None,
        (_, _, Some(range)) => {
            range.refuse("stands beside a scheme or class; keep either `scheme` with `class`, or `range`");
            return None;
        }
        _ => {
            item.refuse("has only one of `scheme` and `class`; a class is read only with its scheme, as `scheme: ral-gz-387-2, class: \"2\"`");
            return None;
        }
    };
    Some(Prescribed { wanted, style, by })
}

fn read_pressure_range(item: &Item<'_>) -> Option<Wanted> {
    let text = item.text()?;
    let Some((low, high)) = range_ends(&text) else {
        item.refuse(format!("`{text}` is no range of pressure; write `20-25 mmHg`"));
        return None;
    };
    let units = item.reader().units();
    let high = read_quantity(high, Dimension::Pressure, units);
    let shared = high.as_ref().map_or(units, |written| units.with(written.unit));
    let low = read_quantity(low, Dimension::Pressure, shared);
    match (low, high) {
        (Ok(low), Ok(high)) if low.number.is_negative() || low.si() > high.si() => {
            item.refuse(format!(
                "`{text}` has its low end above its high end, or below zero; write the smaller first"
            ));
            None
        }
        (Ok(low), Ok(high)) => Some(Wanted::Range {
            low: pressure_from_mmhg(low.si() / PASCAL_PER_MMHG),
            high: pressure_from_mmhg(high.si() / PASCAL_PER_MMHG),
        }),
        (Err(QuantityFault::NoUnit(_)), _) | (_, Err(QuantityFault::NoUnit(_)))
            if item.reader().units_in_doubt() =>
        {
            None
        }
        (_, Err(wrong)) | (Err(wrong), _) => {
            item.refuse(format!("`{text}` {wrong}"));
            None
        }
    }
}

/// A pressure from 0 to 400 mmHg. House rule: above 400 mmHg nothing on a limb is read; a unit slip is
/// likelier.
fn read_pressure(item: &Item<'_>) -> Option<Pressure> {
    let pressure = pressure_from_mmhg(item.not_negative(Dimension::Pressure)? / PASCAL_PER_MMHG);
    let holds = mmhg(pressure) <= 400.0;
    if !holds {
        item.refuse("is above 400 mmHg; check number and unit");
    }
    holds.then_some(pressure)
}

fn read_screening(item: &Item<'_>) -> Option<ScreeningBlock> {
    let fields = item.fields()?;
    let names = |key| fields.blank_or(key).and_then(|one| one.names()).unwrap_or_default();
    let block = ScreeningBlock {
        asked_on: fields.blank_or("asked_on").and_then(|one| one.date()),
        by: fields.blank_or("by").and_then(|one| one.text()),
        none_of: names("none_of"),
        yes: names("yes"),
        no: names("no"),
        unknown: names("unknown"),
    };
    fields.finish();
    Some(block)
}

fn read_arterial(item: &Item<'_>) -> Option<Arterial> {
    let fields = item.fields()?;
    let pressure = |key| fields.blank_or(key).and_then(|one| read_pressure(&one));
    let abpi = fields.blank_or("abpi").and_then(|one| {
        let index = one.number()?;
        let holds = (0.0..=2.5).contains(&index);
        if !holds {
            one.refuse(format!("an index of `{index}` is outside 0 to 2.5; check the decimal point"));
        }
        holds.then_some(index)
    });
    let arterial = Arterial {
        on: fields.blank_or("on").and_then(|one| one.date()),
        abpi,
        ankle_systolic: pressure("ankle_systolic"),
        brachial_systolic: fields.blank_or("brachial_systolic").and_then(|one| {
            let pressure = read_pressure(&one)?;
            let holds = mmhg(pressure) > 0.0;
            if !holds {
                one.refuse("is zero, but the index divides by it; check the number");
            }
            holds.then_some(pressure)
        }),
        toe: pressure("toe"),
        tcpo2: pressure("tcpo2"),
        clinical: fields.blank_or("clinical").and_then(|one| {
            one.word(&[("adequate", Clinical::Adequate), ("inadequate", Clinical::Inadequate)])
        }),
        clinical_by: fields.blank_or("clinical_by").and_then(|one| one.text()),
        cap: pressure("cap"),
    };
    fields.finish();
    if arterial.abpi.is_none() && arterial.index().is_some_and(|index| index > 2.5) {
        item.refuse("ankle over brachial pressure is above 2.5; check both");
        return None;
    }
    Some(arterial)
}

fn read_cleared(item: &Item<'_>) -> Option<Cleared> {
    let fields = item.fields()?;
    let name =
        fields.required("item", "what is cleared, as `item: reduced-feeling`").and_then(|one| one.named());
    let role = fields.required("role", "who cleared it, as `role: consultant`").and_then(|one| one.named());
    let reason = fields.required("reason", "why, in a few words").and_then(|one| one.text());
    let on = fields.required("on", "the date, as `on: 2026-03-14`").and_then(|one| one.date());
    fields.finish();
    Some(Cleared { item: name?, role: role?, reason: reason?, on: on? })
}

fn read_reading(item: &Item<'_>, limb: Limb) -> Option<Reading> {
    let fields = item.fields()?;
    let landmark = fields
        .required("landmark", "where the sensor lay, as `landmark: wrist`")
        .and_then(|one| read_landmark(&one, limb));
    let pressure = fields
        .required("pressure", "what it read, as `pressure: 24 mmHg`")
        .and_then(|one| read_pressure(&one));
    let sd = fields.optional("sd").and_then(|one| read_pressure(&one));
    let posture = fields.optional("posture").and_then(|one| one.text());
    let minutes_worn = fields.optional("minutes_worn").and_then(|one| {
        let minutes = one.number()?;
        if minutes < 0.0 {
            one.refuse(format!("`{minutes}` is below zero; write the minutes since it was put on"));
        }
        Some(minutes)
    });
    let garment = fields.optional("garment").and_then(|one| one.text());
    fields.finish();
    Some(Reading {
        landmark: landmark?,
        pressure: pressure?,
        sd,
        posture,
        minutes_worn,
        garment,
        spot: item.spot(),
    })
}

/// Marks of the limb proper: not on hand or foot, by landmark or, for serial marks, by position.
pub(crate) fn limb_marks(marks: &[Mark], limb: Limb, origin: Origin) -> Vec<&Mark> {
    let reference = limb.reference();
    let start = marks.iter().find(|mark| mark.landmark == Some(reference)).map(|mark| mark.at.tenths()).or(
        match origin {
            Origin::Wrist | Origin::Styloid => Some(0),
            Origin::Fingertip | Origin::Heel | Origin::Floor => None,
        },
    );
    marks
        .iter()
        .filter(|mark| match mark.landmark {
            Some(landmark) => !landmark.on_extremity(),
            None => start.is_none_or(|start| mark.at.tenths() >= start),
        })
        .collect()
}
