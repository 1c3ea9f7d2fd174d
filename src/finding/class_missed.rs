//! Finding `class-missed`: the pressure at the reference hardly lies in the claimed class.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "class-missed",
    title: "Claimed class unlikely",
    meaning: "The pressure at the reference hardly lies in the claimed class.",
    rule: "The chance of the claimed class is below 0.05.",
    basis: Basis::HouseRule,
    source: "",
};

/// What is estimated, claimed and found, as said.
pub fn class_missed(place: Place, estimate: &str, claimed: &str, found: &str, chance: f64) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "The estimate is {estimate}, {found}; claimed is {claimed} (chance {}).",
            words::chance(chance)
        ))
        .next(
            "A certified fitter checks relaxed girth and fabric there, or takes a reading.",
            &[Who::Role(Role::Fitter)],
        )
}
