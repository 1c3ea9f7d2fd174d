//! Finding `beyond-tested`: the stretch lies beyond the last tested point of the fabric.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "beyond-tested",
    title: "Beyond the tested stretch",
    meaning: "The stretch lies beyond the last tested point of the fabric.",
    rule: "A lower bound holds there and is judged with.",
    basis: Basis::HouseRule,
    source: "",
};

/// Marks with their bounds as said (`at least 27 mmHg at the calf`).
pub fn beyond_tested(place: Place, marks: &[String], last_percent: f64) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "The fabric was tested to {} of stretch only; beyond it: {}.",
            words::percent(last_percent),
            words::list(marks)
        ))
        .next(
            "A certified fitter takes a larger size, or a curve tested further.",
            &[Who::Role(Role::Fitter)],
        )
}
