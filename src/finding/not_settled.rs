//! Finding `not-settled`: the limb is still changing.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "not-settled",
    title: "Limb not settled",
    meaning: "The limb is still changing.",
    rule: "Not yet settled: a caution, for made to measure cleared first by a therapist; rising likewise; cannot tell: a note.",
    basis: Basis::HouseRule,
    source: "after volume has settled: Lymphoedema Framework 2006",
};

/// As said, with what would decide.
pub fn not_settled(place: Place, severity: Severity, what: &str, way_on: &str) -> Finding {
    Finding::of(&ENTRY, severity, place)
        .say(what)
        .next(way_on, &[Who::Role(Role::Therapist), Who::Role(Role::Physician)])
}
