//! Finding `distal-hidden`: the distal part is swollen more than the whole limb shows.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "distal-hidden",
    title: "Local swelling behind the whole",
    meaning: "The distal part is swollen more than the whole limb shows.",
    rule: "The excess of the distal part reaches a higher grade of the consensus than the whole limb.",
    basis: Basis::HouseRule,
    source: "",
};

/// Excess of the distal part and of the whole, per cent.
pub fn distal_hidden(place: Place, part: &str, distal: f64, whole: f64) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place).say(format!(
        "The {part} alone is {} larger than on the other side, the whole limb {}: the whole hides it.",
        words::percent(distal),
        words::percent(whole)
    ))
}
