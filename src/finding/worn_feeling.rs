//! Finding `worn-feeling`: the limb tingles or is numb while a garment is in use.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity, Urgency};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "worn-feeling",
    title: "Numbness with a garment in use",
    meaning: "Tingling or numbness is recorded on a limb on which a garment is in use: it may press too much or sit badly.",
    rule: "The item feeling-altered while the record lists a garment in use.",
    basis: Basis::HouseRule,
    source: "",
};

/// `garments` as printed, at least one.
pub fn worn_feeling(place: Place, garments: &[String]) -> Finding {
    let several = garments.len() > 1;
    let what = if several { "garments in use" } else { "a garment in use" };
    let next = if several {
        "The garments in use come off now; look at the fit and at the feeling without pressure before they are worn on."
    } else {
        "The garment in use comes off now; look at the fit and at the feeling without pressure before it is worn on."
    };
    Finding::of(&ENTRY, Severity::Caution, place)
        .urgency(Urgency::SameDay)
        .say(format!("Tingling or numbness is recorded with {what}: {}.", words::list(garments)))
        .next(next, &[Who::Role(Role::Therapist), Who::Role(Role::Fitter)])
}
