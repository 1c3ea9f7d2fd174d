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

/// The pressure of the edge and of the garment below it, as said, with the chance that the edge presses more.
pub fn top_edge(place: Place, severity: Severity, edge: &str, below: &str, chance: f64) -> Finding {
    Finding::of(&ENTRY, severity, place)
        .say(format!("The band at the upper edge presses {edge}, the garment there {below} (chance that the edge presses more: {}).", words::chance(chance)))
        .next("A certified fitter checks the edge for a groove.", &[Who::Role(Role::Fitter), Who::Role(Role::Therapist)])
}
