//! Finding `same-size-unsure`: a second measurement may well pick another size.

use super::{Entry, Finding, Place, Who};
use crate::anatomy::Landmark;
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "same-size-unsure",
    title: "Same size again unsure",
    meaning: "A second measurement may well pick another size.",
    rule: "The chance that it would pick the same size is below 0.9.",
    basis: Basis::Derived,
    source: "",
};

/// The chance, the most chosen other size, and where the least margin is.
pub fn same_size_unsure(place: Place, chance: f64, other: Option<&str>, closest: Landmark) -> Finding {
    let then =
        other.map_or_else(String::new, |other| format!("; most often the other would be size {other}"));
    Finding::of(&ENTRY, Severity::Note, place)
        .say(format!(
            "The chance that a second measurement would pick the same size is {}{then}.",
            words::chance(chance)
        ))
        .next(
            format!("Measure the girth {} once more and write both values.", words::at(closest)),
            &[Who::Recorder],
        )
}
