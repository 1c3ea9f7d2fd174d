//! Finding `arterial-unknown`: nothing is known of the arteries of the leg.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "arterial-unknown",
    title: "Arteries not assessed",
    meaning: "Nothing is known of the arteries of the leg.",
    rule: "Above 20 mmHg, or with an arterial item, diabetes or kidney failure present or open, cleared first; otherwise a caution. No role lifts it: a value or an assessment is needed.",
    basis: Basis::Published,
    source: "a UK hosiery guide; British Lymphology Society 2018",
};

/// One arterial value, judged. `value` as said with its date, `why` what it means.
pub fn arterial_unknown(place: Place, severity: Severity, value: &str, why: &str) -> Finding {
    Finding::of(&ENTRY, severity, place).say(format!("{value}: {why}."))
}
