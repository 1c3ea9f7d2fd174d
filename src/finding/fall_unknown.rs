//! Finding `fall-unknown`: what is known does not decide whether the pressure falls toward the trunk.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "fall-unknown",
    title: "Fall not known",
    meaning: "What is known does not decide whether the pressure falls toward the trunk.",
    rule: "The reference, a mark between and the top are judged, and the grade is decided; otherwise the ways on are named. Pieces of unlike knits of which one has no curve are not held against each other.",
    basis: Basis::HouseRule,
    source: "",
};

/// Why, and the ways on.
pub fn fall_unknown(place: Place, why: &str, way_on: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place)
        .say(format!("Whether the pressure falls toward the trunk is not known: {why}."))
        .next(way_on, &[Who::Role(Role::Fitter), Who::Role(Role::Therapist)])
}
