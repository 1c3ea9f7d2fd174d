//! Finding `rise`: the pressure rises toward the trunk, a tourniquet effect, or readings and estimate contradict each other.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "rise",
    title: "Pressure rises toward the trunk",
    meaning: "The pressure rises toward the trunk, a tourniquet effect, or readings and estimate contradict each other.",
    rule: "Certain takes a stock size out; certain below 3 mmHg, likely, and a contradiction are cleared first by fitter or therapist; possible is a caution. Readings and estimate contradict each other where at a mark they lie further apart than 1.96 times the root of the squares of the reading's SD and that of the estimate as worn, or where one of them rises likely or certainly and the other falls; the worse counts. A reading in the hollow beside the ankle bone is not among them.",
    basis: Basis::HouseRule,
    source: "any rise counts as a reversal: Best 2000, JBJS Br 82-B:116",
};

/// The sentence says grade, chance, basis and place; see the words of the fall.
pub fn rise(place: Place, severity: Severity, sentence: &str) -> Finding {
    let found = Finding::of(&ENTRY, severity, place).say(sentence);
    match severity {
        Severity::Caution => found.next("Check the fall there at the trial fitting.", &[Who::Role(Role::Fitter)]),
        _ => found.next(
            "A certified fitter or the therapist checks the fall there before anything is worn: another size, or made to measure.",
            &[Who::Role(Role::Fitter), Who::Role(Role::Therapist)],
        ),
    }
}

/// Readings and estimate contradict each other; `sentence` says where, and the worse of the two.
pub fn contradicted(place: Place, sentence: &str) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place).say(sentence).next(
        "A certified fitter or the therapist finds out which is right: read again, and lay the garment flat and measure its widths again.",
        &[Who::Role(Role::Fitter), Who::Role(Role::Therapist)],
    )
}
