//! Finding `calipers-differ`: calipers and tape do not describe the same section.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "calipers-differ",
    title: "Calipers and tape differ",
    meaning: "Calipers and tape do not describe the same section.",
    rule: "More than a tenth apart.",
    basis: Basis::HouseRule,
    source: "",
};

/// The girth by calipers and by tape, cm.
pub fn calipers_differ(place: Place, mark: &str, by_calipers: f64, by_tape: f64) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "The calipers {mark} give a girth of {} cm, the tape {} cm.",
            words::decimal(by_calipers, 1),
            words::decimal(by_tape, 1)
        ))
        .next("Measure both again.", &[Who::Recorder])
}
