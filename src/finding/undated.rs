//! Finding `undated`: something that counts only with a date has none.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "undated",
    title: "Date missing",
    meaning: "Something that counts only with a date has none.",
    rule: "Answers without a date are open; arterial values without a date are no route.",
    basis: Basis::HouseRule,
    source: "",
};

/// What has no date, as said.
pub fn undated(place: Place, what: &str, so: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("{what} has no date, so {so}."))
        .next("Write the date.", &[Who::Recorder])
}
