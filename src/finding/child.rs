//! Finding `child`: the client is a child.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "child",
    title: "Child",
    meaning: "The client is a child.",
    rule: "Under 16: cleared first by a doctor or the prescriber; adult girth bands are off.",
    basis: Basis::HouseRule,
    source: "",
};

/// The client is under 16.
pub fn child(place: Place) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say("The client is under 16: adult bands of girth do not hold, and limbs grow.")
        .next(
            "A doctor who knows swelling in children agrees first.",
            &[Who::Role(Role::Physician), Who::Role(Role::Prescriber)],
        )
}
