//! Finding `clinical`: the clinical vascular assessment stands against a garment, or does not count.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "clinical",
    title: "Clinical vascular assessment",
    meaning: "The clinical vascular assessment stands against a garment, or does not count.",
    rule: "Doubtful cleared first; inadequate stop; without date or role it does not count.",
    basis: Basis::Published,
    source: "British Lymphology Society 2018",
};

/// An assessment that does not count; `missing` as said (`a date`).
pub fn not_counted(place: Place, missing: &[&str]) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("The clinical vascular assessment does not count: it lacks {}.", words::list(missing)))
        .next("Write down what is missing.", &[Who::Recorder])
}
