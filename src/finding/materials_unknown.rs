//! Finding `materials-unknown`: an allergy is recorded and the garment's materials are not known.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "materials-unknown",
    title: "Materials not known",
    meaning: "An allergy is recorded and the garment's materials are not known.",
    rule: "Cleared first by a fitter or therapist with the maker's answer.",
    basis: Basis::HouseRule,
    source: "",
};

/// `allergies` as written.
pub fn materials_unknown(place: Place, allergies: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say(format!(
            "An allergy is recorded ({}), and what this garment is made of is not known.",
            words::list(allergies)
        ))
        .next(
            "A certified fitter or the therapist asks the maker and clears it.",
            &[Who::Role(Role::Fitter), Who::Role(Role::Therapist)],
        )
}
