//! Owns the reading of the numbers of the house.

use super::read::{basis, text};
use super::{Number, NumberId, Written};
use crate::input::Item;
use crate::quantity::{Dimension, PASCAL_PER_MMHG};

pub(super) fn read_number(item: &Item<'_>) -> Option<Number> {
    let fields = item.fields()?;
    let words: Vec<(&str, NumberId)> = NumberId::ALL.iter().map(|id| (id.id(), *id)).collect();
    let id = fields.required("id", "the number's name")?.word(&words)?;
    let value = fields.required("value", "its value")?;
    let written = value.text()?;
    let whole = |unit: &str| {
        let digits = written.strip_suffix('s').unwrap_or(&written).strip_suffix(unit);
        digits.and_then(|number| number.trim().parse::<u8>().ok()).map(f64::from)
    };
    let number = match id.written() {
        Written::Length => value.quantity(Dimension::Length)?.si() * 100.0,
        Written::Pressure | Written::Signed => value.quantity(Dimension::Pressure)?.si() / PASCAL_PER_MMHG,
        Written::Share => value.quantity(Dimension::Ratio)?.si(),
        Written::Plain | Written::Chance => value.number()?,
        Written::Months | Written::Days => {
            let unit = if id.written() == Written::Months { "month" } else { "day" };
            let Some(number) = whole(unit) else {
                value.refuse(format!("`{written}` is no whole number of {unit}s; write `3 {unit}s`"));
                return None;
            };
            number
        }
    };
    if number < 0.0 && id.written() != Written::Signed {
        value.refuse(format!("`{written}` is below zero"));
    }
    if number > 1.0 && id.written() == Written::Chance {
        value.refuse(format!("`{written}` is no chance; write it from 0 to 1, as `0.95`"));
    }
    let rule =
        Number { id, value: number, text: written, basis: basis(&fields)?, why: text(&fields, "why")? };
    fields.finish();
    Some(rule)
}
