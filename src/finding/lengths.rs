//! Finding `lengths`: a stated length differs from the positions of the marks.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "lengths",
    title: "Length and positions differ",
    meaning: "A stated length differs from the positions of the marks.",
    rule: "Asked beyond 1 cm; answered by `lengths` under `confirmed`.",
    basis: Basis::HouseRule,
    source: "",
};

/// Lengths that differ, as said (`wrist to axilla 42.0 cm, by the positions 60.0 cm`).
pub fn lengths(place: Place, each: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("A stated length differs from the positions of the marks: {}.", words::list(each)))
        .next(
            "Measure the length again, or mend the positions. If both hold, say so in the record.",
            &[Who::Recorder],
        )
        .asks("lengths")
}
