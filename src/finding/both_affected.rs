//! Finding `both-affected`: both sides are affected.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "both-affected",
    title: "Both sides affected",
    meaning: "Both sides are affected.",
    rule: "None is a measure of the other, so there is no excess.",
    basis: Basis::Derived,
    source: "",
};

/// Both sides are affected.
pub fn both_affected(place: Place) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place)
        .say("Both sides are affected, so neither is a measure of the other: there is no excess, and the course counts.")
}
