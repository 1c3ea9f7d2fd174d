//! Finding `allergy-unknown`: an allergy is recorded whose word is not in the table of materials.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "allergy-unknown",
    title: "Allergy not in the table",
    meaning: "An allergy is recorded whose word is not in the table of materials.",
    rule: "Cleared first by a fitter, who asks the maker.",
    basis: Basis::HouseRule,
    source: "",
};

/// Words that the table does not hold.
pub fn allergy_unknown(place: Place, named: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say(format!("The table of materials does not know: {}.", words::list(named)))
        .next("Write the material's usual name, or ask the maker and clear it.", &[Who::Role(Role::Fitter)])
}
