//! Owns the reading of pressures: single ones, ranges, caps and the prescription.

use super::{Cap, Prescribed, Wanted};
use crate::anatomy::Limb;
use crate::input::{Item, Named};
use crate::quantity::{
    Dimension, PASCAL_PER_MMHG, Pressure, QuantityFault, mmhg, pressure_from_mmhg, range_ends, read_quantity,
};

/// A pressure from 0 to 400 mmHg. House rule: above 400 mmHg nothing on a limb is read; a wrong unit is
/// likelier.
pub(super) fn read_pressure(item: &Item<'_>) -> Option<Pressure> {
    let pressure = pressure_from_mmhg(item.not_negative(Dimension::Pressure)? / PASCAL_PER_MMHG);
    let holds = mmhg(pressure) <= 400.0;
    if !holds {
        item.refuse("is above 400 mmHg; check number and unit");
    }
    holds.then_some(pressure)
}

/// A cap: a pressure, or the upper end of a class, as `class 1 of ral-gz-387-1`.
pub(super) fn read_cap(item: &Item<'_>, limb: Limb) -> Option<Cap> {
    let text = item.text()?;
    let Some(rest) = text.strip_prefix("class ") else {
        return read_pressure(item).map(Cap::Pressure);
    };
    let parts = rest.rsplit_once(" of ").map(|(class, scheme)| {
        let plain = |text: &str| text.trim().trim_matches(['"', '\'']).to_owned();
        (plain(class), plain(scheme))
    });
    let Some((class, scheme)) = parts.filter(|(class, scheme)| !class.is_empty() && !scheme.is_empty())
    else {
        let scheme = match limb {
            Limb::Arm => "ral-gz-387-2",
            Limb::Leg => "ral-gz-387-1",
        };
        item.refuse(format!(
            "`{text}` is no cap; write a pressure, as `20 mmHg`, or a class with its scheme, as `class 1 of {scheme}`"
        ));
        return None;
    };
    let named = |text| Named { text, spot: item.spot() };
    Some(Cap::Class { class: named(class), scheme: named(scheme) })
}

/// A block `prescribed`.
pub(super) fn read_prescribed(item: &Item<'_>) -> Option<Prescribed> {
    let fields = item.fields()?;
    let scheme = fields.optional("scheme").and_then(|one| one.named());
    let class = fields.optional("class").and_then(|one| one.named());
    let range = fields.optional("range");
    let style = fields.optional("style").and_then(|one| one.label());
    let by = fields.optional("by").and_then(|one| one.label());
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
    Some(Prescribed { wanted, style, by, spot: item.spot() })
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
