//! Finding `loading-branch`: the fabric's curve was taken while the weights went on.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "loading-branch",
    title: "Curve of the loading branch",
    meaning: "The fabric's curve was taken while the weights went on.",
    rule: "Worn fabric sits on the return branch, so the figures are too high.",
    basis: Basis::Memory,
    source: "",
};

/// Said of a curve of the loading branch.
pub fn loading_branch(place: Place) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place)
        .say("The curve was read while the weights went on; worn fabric presses less, so these figures are too high.")
}
