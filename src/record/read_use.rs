//! Owns the reading of sensor readings, garments in use, and lists of dates and of words.

use jiff::civil::Date;

use super::read_marks::read_landmark;
use super::read_pressure::read_pressure;
use super::{GarmentInUse, Reading, SensorSide};
use crate::anatomy::Limb;
use crate::input::{Item, Text};
use crate::quantity::{Dimension, PASCAL_PER_MMHG, Pressure, pressure_from_mmhg, read_quantity};

/// Most of one garment that are taken as given at once (house rule).
const MOST_GARMENTS: u32 = 50;

/// The list `readings`.
pub(super) fn read_readings(item: &Item<'_>, limb: Limb) -> Option<Vec<Reading>> {
    Some(item.list()?.iter().filter_map(|one| read_reading(one, limb)).collect())
}

fn read_reading(item: &Item<'_>, limb: Limb) -> Option<Reading> {
    let fields = item.fields()?;
    let landmark = fields
        .required("landmark", "where the sensor lay, as `landmark: wrist`")
        .and_then(|one| read_landmark(&one, limb));
    let pressure_item = fields.required("pressure", "what it read, as `pressure: 24 mmHg`");
    let pressure = pressure_item.as_ref().and_then(read_pressure);
    let sd = fields.optional("sd").and_then(|one| read_sd(&one, pressure_item.as_ref()));
    let sensor_side_text = fields.optional("sensor_side").and_then(|one| one.label());
    let posture = fields.optional("posture").and_then(|one| one.label());
    let minutes_worn = fields.optional("minutes_worn").and_then(|one| {
        let minutes = one.number()?;
        if minutes < 0.0 {
            one.refuse(format!("`{minutes}` is below zero; write the minutes since it was put on"));
        }
        Some(minutes)
    });
    let garment = fields.optional("garment").and_then(|one| one.named());
    fields.finish();
    Some(Reading {
        landmark: landmark?,
        pressure: pressure?,
        sd,
        sensor_side: sensor_side_text.as_ref().map(|text| SensorSide::of(text)),
        sensor_side_text,
        posture,
        minutes_worn,
        garment,
        spot: item.spot(),
    })
}

/// The SD of a reading; a bare number is in the unit of its pressure.
fn read_sd(item: &Item<'_>, pressure: Option<&Item<'_>>) -> Option<Pressure> {
    let text = item.text()?;
    let units = item.reader().units();
    let beside = pressure.and_then(Item::text).and_then(|text| {
        read_quantity(&text, Dimension::Pressure, units).ok().map(|written| units.with(written.unit))
    });
    match beside.map(|units| read_quantity(&text, Dimension::Pressure, units)) {
        Some(Ok(written)) if !written.number.is_negative() => {
            Some(pressure_from_mmhg(written.si() / PASCAL_PER_MMHG))
        }
        _ => read_pressure(item),
    }
}

impl SensorSide {
    /// The side that a text names; `ankle-hollow` and any other words with `hollow` are the hollow.
    pub fn of(text: &str) -> Self {
        if text.to_lowercase().contains("hollow") { Self::AnkleHollow } else { Self::Elsewhere }
    }
}

/// The list `garments`.
pub(super) fn read_garments(item: &Item<'_>) -> Option<Vec<GarmentInUse>> {
    Some(item.list()?.iter().filter_map(read_garment).collect())
}

fn read_garment(item: &Item<'_>) -> Option<GarmentInUse> {
    let fields = item.fields()?;
    let label =
        fields.required("label", "the garment's name, as its chart's `label`").and_then(|one| one.label());
    let size = fields.optional("size").and_then(|one| one.label());
    let given_on =
        fields.required("given_on", "the date, as `given_on: 2026-03-20`").and_then(|one| one.date());
    let quantity = fields.optional("quantity").map(|one| one.whole(1, MOST_GARMENTS));
    let hours_a_day = fields.optional("hours_a_day").and_then(|one| {
        let hours = one.number()?;
        let holds = (0.0..=24.0).contains(&hours);
        if !holds {
            one.refuse(format!("`{hours}` is not between 0 and 24; write the hours worn a day"));
        }
        holds.then_some(hours)
    });
    fields.finish();
    Some(GarmentInUse {
        label: label?,
        size,
        given_on: given_on?,
        quantity: quantity.unwrap_or(Some(1))?,
        hours_a_day,
    })
}

/// A list of dates.
pub(super) fn read_dates(item: &Item<'_>) -> Option<Vec<Date>> {
    Some(item.list()?.iter().filter_map(Item::date).collect())
}

/// A list of labels.
pub(super) fn read_labels(item: &Item<'_>) -> Option<Vec<Text>> {
    Some(item.list()?.iter().filter_map(Item::label).collect())
}
