//! Owns the reading of arterial values; values that no artery can have are refused as misreadings.

use super::read_pressure::{read_cap, read_pressure};
use super::{Arterial, Clinical, Index};
use crate::anatomy::Limb;
use crate::input::Item;
use crate::quantity::mmhg;
use crate::rules::Role;

/// Highest index of two pressures that is taken (house rule: above it a decimal point is lost).
const MOST_INDEX: f64 = 2.5;

/// A block `arterial`.
pub(super) fn read_arterial(item: &Item<'_>) -> Option<Arterial> {
    let fields = item.fields()?;
    let pressure = |key| fields.blank_or(key).and_then(|one| read_pressure(&one));
    let arterial = Arterial {
        taken_on: fields.blank_or("taken_on").and_then(|one| one.date()),
        abpi: fields.blank_or("abpi").and_then(|one| read_abpi(&one)),
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
        toe_brachial: fields.blank_or("toe_brachial").and_then(|one| read_index(&one)),
        tcpo2: pressure("tcpo2"),
        clinical: fields.blank_or("clinical").and_then(|one| one.word(&Clinical::WORDS)),
        clinical_by: fields.blank_or("clinical_by").and_then(|one| one.word(&Role::WORDS)),
        clinical_found: fields.blank_or("clinical_found").and_then(|one| one.label()),
        cap: fields.blank_or("cap").and_then(|one| read_cap(&one, Limb::Leg)),
        spot: item.spot(),
    };
    fields.finish();
    if arterial.quotient().is_some_and(|index| index > MOST_INDEX) {
        item.refuse("ankle over brachial pressure is above 2.5; check both");
        return None;
    }
    Some(arterial)
}

fn read_abpi(item: &Item<'_>) -> Option<Index> {
    let text = item.text()?;
    if text == Index::NOT_COMPRESSIBLE {
        return Some(Index::NotCompressible);
    }
    if text.starts_with(char::is_alphabetic) {
        item.refuse(format!("`{text}` is no index; write a number, as `1.04`, or `not-compressible`"));
        return None;
    }
    read_index(item).map(Index::Value)
}

/// An index of two pressures, 0 to 2.5.
fn read_index(item: &Item<'_>) -> Option<f64> {
    let index = item.number()?;
    let holds = (0.0..=MOST_INDEX).contains(&index);
    if !holds {
        item.refuse(format!("an index of `{index}` is outside 0 to 2.5; check the decimal point"));
    }
    holds.then_some(index)
}

impl Index {
    /// The word of an artery that cannot be pressed shut.
    pub const NOT_COMPRESSIBLE: &'static str = "not-compressible";
}
