//! Finding `volume-not-compared`: the limbs' volumes cannot be compared.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "volume-not-compared",
    title: "Volumes not compared",
    meaning: "The limbs' volumes cannot be compared.",
    rule: "Both limbs are compared by the same landmarks only.",
    basis: Basis::Derived,
    source: "",
};

/// Why not.
pub fn volume_not_compared(place: Place, why: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place)
        .say(format!("The volumes of both limbs are not compared: {why}."))
}
