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

/// The estimate as said, if there is one.
pub fn nothing_to_hold(place: Place, severity: Severity, estimate: &str) -> Finding {
    Finding::of(&ENTRY, severity, place)
        .say(format!("No pressure is prescribed and none is claimed, so {estimate} is held against nothing."))
        .next("Ask the prescriber which pressure is wanted.", &[Who::Role(Role::Prescriber)])
}
