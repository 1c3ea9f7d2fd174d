//! Finding `nothing-to-hold`: neither prescription nor class says which pressure is wanted.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "nothing-to-hold",
    title: "Nothing to hold the pressure against",
    meaning: "Neither prescription nor class says which pressure is wanted.",
    rule: "A caution; above 20 mmHg cleared first by the prescriber.",
    basis: Basis::HouseRule,
    source: "",
};

/// What is known, if anything (`The estimate is 27 mmHg at the wrist`).
pub fn nothing_to_hold(place: Place, severity: Severity, said: Option<&str>) -> Finding {
    let text = match said {
        Some(said) => {
            format!("{said}, and neither a prescription nor a class of what is worn says what is wanted.")
        }
        None => {
            "Neither a prescription nor a class of what is worn says which pressure is wanted.".to_owned()
        }
    };
    Finding::of(&ENTRY, severity, place)
        .say(text)
        .next("Ask the prescriber which pressure is wanted.", &[Who::Role(Role::Prescriber)])
}
