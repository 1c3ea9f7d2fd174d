//! Finding `clinical`: the clinical vascular assessment stands against a garment, or does not count.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "clinical",
    title: "Clinical vascular assessment",
    meaning: "The clinical vascular assessment stands against a garment, or does not count.",
    rule: "Doubtful cleared first; inadequate stop; without date or role it does not count.",
    basis: Basis::Published,
    source: "British Lymphology Society 2018",
};

/// One arterial value, judged. `value` as said with its date, `why` what it means.
pub fn clinical(place: Place, severity: Severity, value: &str, why: &str) -> Finding {
    Finding::of(&ENTRY, severity, place).say(format!("{value}: {why}."))
}
