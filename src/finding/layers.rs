//! Finding `layers`: pieces lie over one another.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "layers",
    title: "Pieces over one another",
    meaning: "Pieces lie over one another.",
    rule: "The plain sum is an upper estimate; two stockings gave 0.83 to 0.85 of it.",
    basis: Basis::Published,
    source: "Ann Vasc Dis 2012;5:435",
};

/// Which pieces, as said.
pub fn layers(place: Place, pieces: &[String], from: &str, to: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place).say(format!(
        "{} lie over one another {from} to {to}: the sum is an upper estimate, in life about 0.83 to 0.85 of it was measured.",
        words::list(pieces)
    ))
}
