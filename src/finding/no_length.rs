//! Finding `no-length`: no length variant takes the limb, or the length is not known.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "no-length",
    title: "No length fits",
    meaning: "No length variant takes the limb, or the length is not known.",
    rule: "No variant takes it: made to measure. Not known: the length is measured.",
    basis: Basis::Published,
    source: "trade measuring rule after RAL",
};

/// What is known of the length, as said (`no length for 48 cm; the longest is 44`).
pub fn no_length(place: Place, what: &str, known: bool) -> Finding {
    let found = Finding::of(&ENTRY, Severity::Caution, place).say(format!("{what}."));
    if known {
        found.next("A certified fitter takes a made-to-measure order.", &[Who::Role(Role::Fitter)])
    } else {
        found.next("Measure the length.", &[Who::Recorder]).open()
    }
}
