//! Finding `worn-allergen`: a garment in use contains a material that the client is allergic to.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity, Urgency};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "worn-allergen",
    title: "Allergen in a garment in use",
    meaning: "A garment that the record lists as in use contains a material that the client is allergic to.",
    rule: "The materials of the chart or garment file of its label, held against the allergies.",
    basis: Basis::HouseRule,
    source: "",
};

/// The garment as printed, the material as its chart names it.
pub fn worn_allergen(place: Place, garment: &str, material: &str, allergy: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .urgency(Urgency::SameDay)
        .say(format!("An allergy to {allergy} is recorded, and a garment in use contains {material}: {garment}."))
        .next(
            "That garment comes off now and is not ordered again; look at the skin, and look for another garment.",
            &[Who::Role(Role::Therapist), Who::Role(Role::Fitter)],
        )
}
