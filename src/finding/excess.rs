//! Finding `excess`: the limb is larger than the other one.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "excess",
    title: "Excess volume",
    meaning: "The limb is larger than the other one.",
    rule: "Graded by every set; none is a verdict.",
    basis: Basis::Published,
    source: "",
};

/// The excess as said.
pub fn excess(place: Place, what: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place).say(format!("{what}."))
}
