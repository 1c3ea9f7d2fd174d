//! Finding `rise`: the pressure rises toward the trunk, a tourniquet effect.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "rise",
    title: "Pressure rises toward the trunk",
    meaning: "The pressure rises toward the trunk, a tourniquet effect.",
    rule: "Certain takes a stock size out; certain below 3 mmHg and likely are cleared first by fitter or therapist; possible is a caution.",
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
