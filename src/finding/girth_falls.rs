//! Finding `girth-falls`: the girth falls toward the trunk.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "girth-falls",
    title: "Girth falls toward the trunk",
    meaning: "The girth falls toward the trunk.",
    rule: "A caution; hand to wrist, everything distal to the ankle, calf to below the knee and the joint are exempt. A rules file may raise it.",
    basis: Basis::HouseRule,
    source: "",
};

/// Pairs as said (`31.0 cm at the forearm, 29.0 cm at the upper arm`).
pub fn girth_falls(place: Place, pairs: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("The girth falls toward the trunk: {}.", words::list(pairs)))
        .next("A certified fitter looks at the shape there.", &[Who::Role(Role::Fitter)])
}
