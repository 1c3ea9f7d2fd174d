//! Finding `no-contact`: the relaxed garment is as wide as the limb at a mark.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "no-contact",
    title: "No contact",
    meaning: "The relaxed garment is as wide as the limb at a mark.",
    rule: "No contact, no pressure: cleared first by fitter or therapist.",
    basis: Basis::Derived,
    source: "",
};

/// Marks as said (`at the wrist`).
pub fn no_contact(place: Place, marks: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say(format!(
            "The relaxed garment is as wide as the limb or wider {}: no contact, no pressure there.",
            words::list(marks)
        ))
        .next(
            "A certified fitter checks the relaxed girth; a smaller size, or made to measure.",
            &[Who::Role(Role::Fitter), Who::Role(Role::Therapist)],
        )
}
