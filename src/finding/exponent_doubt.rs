//! Finding `exponent-doubt`: the exponent of a knit is odd, or its pull hardly tells it.

use super::{Entry, Finding, Place, Who};
use crate::garment::{Exponent, ExponentDoubt};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "exponent-doubt",
    title: "Exponent in doubt",
    meaning: "The exponent of a knit lies outside those of knits, or its two weights stretched the strip too much alike to tell it.",
    rule: "Outside the numbers stretch-exponent-low and stretch-exponent-high, or an SD above 0.1 by the lengths read (0.1 cm each). The fall is then judged with the exponents of an untested knit as well, or with as many as the lengths leave.",
    basis: Basis::HouseRule,
    source: "the SD of a pull is derived",
};

/// What is asked about the exponent of a knit, and what to do, as sentences; `usual` are those of untested knits.
pub fn exponent_doubt_words(
    fabric: &str,
    exponent: Exponent,
    doubt: ExponentDoubt,
    (low, high): (f64, f64),
) -> (String, &'static str) {
    let by = if exponent.pull_sd.is_some() { "The strip pull of" } else { "The file of" };
    let said = words::exponent(exponent.value, exponent.known_sd());
    match doubt {
        ExponentDoubt::Odd => (
            format!(
                "{by} {fabric} gives an exponent of {said}; knits have {} to {}. The fall is judged with those as well.",
                words::trimmed(low, 2),
                words::trimmed(high, 2)
            ),
            "Check weights and lengths, and pull the strip again.",
        ),
        ExponentDoubt::Unsure => (
            format!(
                "{by} {fabric} gives an exponent of {said}, hardly known: both weights stretched the strip nearly alike."
            ),
            "Pull it again on a longer strip, with a lighter weight of about two fifths of the heavier.",
        ),
    }
}

/// An exponent in doubt.
pub fn exponent_doubt(
    place: Place,
    fabric: &str,
    exponent: Exponent,
    doubt: ExponentDoubt,
    usual: (f64, f64),
) -> Finding {
    let (what, next) = exponent_doubt_words(fabric, exponent, doubt, usual);
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(what)
        .next(next, &[Who::Role(Role::Fitter), Who::Role(Role::Therapist)])
}
