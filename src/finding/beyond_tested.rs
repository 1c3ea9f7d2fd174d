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

/// Marks with their bounds as said (`at least 27 mmHg at the calf`); each fabric that ends too early with whose it
/// is, where several are worn, and its last tested stretch in per cent.
pub fn beyond_tested(place: Place, marks: &[String], ends: &[(Option<String>, f64)]) -> Finding {
    let ends: Vec<String> = ends
        .iter()
        .map(|(whose, percent)| {
            let whose =
                whose.as_ref().map_or_else(|| "the fabric".to_owned(), |one| format!("the fabric of {one}"));
            format!("{whose} was tested to {} of stretch only", words::percent(*percent))
        })
        .collect();
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("{}; beyond it: {}.", words::capital(&words::list(&ends)), words::list(marks)))
        .next(
            "A certified fitter takes a larger size, or a curve tested further.",
            &[Who::Role(Role::Fitter)],
        )
}
