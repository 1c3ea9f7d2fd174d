//! Finding `worn-reading`: sensor readings under a garment in use are too high, or rise toward the trunk.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity, Urgency};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "worn-reading",
    title: "Readings under a garment in use",
    meaning: "A sensor read more than the limit of pressure under a garment that is in use, or the readings under it rise toward the trunk.",
    rule: "Readings whose `garment` names a garment in use, label and size, whether that size is in question or not: one above the number pressure-limit, or a likely or certain rise that does not rest on the ankle hollow.",
    basis: Basis::HouseRule,
    source: "",
};

/// The garment as printed, and what was read, as a clause.
pub fn worn_reading(place: Place, garment: &str, what: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .urgency(Urgency::SameDay)
        .say(format!("Under a garment in use, {garment}, {what}."))
        .next(
            "The garment in use comes off now; check sensor, girth and size before it is worn on.",
            &[Who::Role(Role::Therapist), Who::Role(Role::Fitter)],
        )
}
