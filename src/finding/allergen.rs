//! Finding `allergen`: the garment contains a material that the client is allergic to.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity, Urgency};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "allergen",
    title: "Allergen in the garment",
    meaning: "The garment contains a material that the client is allergic to.",
    rule: "A stop for that garment.",
    basis: Basis::HouseRule,
    source: "",
};

/// The material as the chart names it.
pub fn allergen(place: Place, material: &str, allergy: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Stop, place)
        .urgency(Urgency::Routine)
        .say(format!("The garment contains {material}; an allergy to {allergy} is recorded."))
        .next(
            "A certified fitter looks for another garment; this one is not worn.",
            &[Who::Role(Role::Fitter)],
        )
}
