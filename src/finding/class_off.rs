//! Finding `class-off`: the pressure at the reference lies in another class than the one claimed, or between two.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "class-off",
    title: "Another class",
    meaning: "The pressure at the reference lies in another class than the one claimed, or between two.",
    rule: "A note.",
    basis: Basis::Derived,
    source: "",
};

/// What is estimated and found, as said.
pub fn class_off(place: Place, estimate: &str, claimed: &str, found: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place)
        .say(format!("The estimate is {estimate}, {found}; claimed is {claimed}."))
}
