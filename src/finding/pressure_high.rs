//! Finding `pressure-high`: a mark lies above 60 mmHg.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "pressure-high",
    title: "Very high pressure",
    meaning: "A mark lies above 60 mmHg.",
    rule: "Estimate, lower bound or reading: cleared first by the prescriber.",
    basis: Basis::HouseRule,
    source: "",
};

/// What to do where a sensor said so.
const TAKE_OFF: &str = "Take the garment off until this is settled. Ask the prescriber; check the sensor, the girth and the size first.";

/// The same where taking it off is told already, of the garment in use.
pub fn told_to_take_off(mut one: Finding) -> Finding {
    if one.id.is(&ENTRY) && one.next == TAKE_OFF {
        "Ask the prescriber.".clone_into(&mut one.next);
    }
    one
}

/// Where and how much, as said (`64 mmHg estimated at the calf`, `at least 62 mmHg estimated at the calf`); `is_read`
/// where a sensor said so, for then the garment is on the limb.
pub fn pressure_high(place: Place, what: &str, limit: f64, is_read: bool) -> Finding {
    let next =
        if is_read { TAKE_OFF } else { "Ask the prescriber; check girth, relaxed girth and fabric first." };
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say(format!("Above {}: {what}.", words::mmhg(limit)))
        .next(next, &[Who::Role(Role::Prescriber)])
}
