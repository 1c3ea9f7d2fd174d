//! Finding `top-edge`: the band at the upper edge presses more than the garment below it.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "top-edge",
    title: "Upper edge presses more",
    meaning: "The band at the upper edge presses more than the garment below it.",
    rule: "Compared by the same chance as two marks; any folded edge doubles the pressure there.",
    basis: Basis::HouseRule,
    source: "",
};

/// The pressure of the edge and of the garment below it, as said, with the chance that the edge presses more;
/// `at_least` = the edge lies beyond its tested stretch, so that the chance is the least that it can be.
pub fn top_edge(
    place: Place,
    severity: Severity,
    (edge, below): (&str, &str),
    (chance, at_least): (f64, bool),
) -> Finding {
    let least = if at_least && chance <= 0.99 { "at least " } else { "" };
    Finding::of(&ENTRY, severity, place)
        .say(format!("The band at the upper edge presses {edge}, the garment there {below} (chance that the edge presses more: {least}{}).", words::chance(chance)))
        .next("A certified fitter checks the edge for a groove.", &[Who::Role(Role::Fitter), Who::Role(Role::Therapist)])
}
