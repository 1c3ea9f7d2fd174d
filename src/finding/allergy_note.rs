//! Finding `allergy-note`: an allergy is recorded that no garment is made of.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "allergy-note",
    title: "Allergy not of a material",
    meaning: "An allergy is recorded that no garment is made of.",
    rule: "Drugs, foods and pollen are a note.",
    basis: Basis::HouseRule,
    source: "",
};

/// Words that are no material.
pub fn allergy_note(place: Place, named: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place)
        .say(format!("Allergies that no garment is made of: {}.", words::list(named)))
}
