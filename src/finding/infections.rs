//! Finding `infections`: two or more infections of the limb in a year.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "infections",
    title: "Two infections in a year",
    meaning: "Two or more infections of the limb in a year.",
    rule: "Medical review of the infections.",
    basis: Basis::Published,
    source: "British Lymphology Society",
};

/// So many in the last twelve months.
pub fn infections(place: Place, count: usize) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "{} infections of the limb in the last twelve months.",
            words::capital(&words::number_word(count))
        ))
        .next("A doctor reviews why they come back.", &[Who::Role(Role::Physician)])
}
