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

/// What is known, if anything (`The estimate is 27 mmHg at the wrist`); `together` = several pieces, whose own
/// classes say nothing of their sum.
pub fn nothing_to_hold(place: Place, severity: Severity, said: Option<&str>, together: bool) -> Finding {
    let of = if together { "a class for the pieces together" } else { "a class of what is worn" };
    let text = match said {
        Some(said) => format!("{said}, and neither a prescription nor {of} says what is wanted."),
        None => {
            format!("Neither a prescription nor {of} says which pressure is wanted.")
        }
    };
    Finding::of(&ENTRY, severity, place)
        .say(text)
        .next("Ask the prescriber which pressure is wanted.", &[Who::Role(Role::Prescriber)])
}
