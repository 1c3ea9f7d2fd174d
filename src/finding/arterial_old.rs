//! Finding `arterial-old`: arterial values are old.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "arterial-old",
    title: "Arterial values are old",
    meaning: "Arterial values are old.",
    rule: "Over 6 months a caution; over 12 months no pass.",
    basis: Basis::HouseRule,
    source: "",
};

/// One arterial value, judged. `value` as said with its date, `why` what it means.
pub fn arterial_old(place: Place, severity: Severity, value: &str, why: &str) -> Finding {
    Finding::of(&ENTRY, severity, place).say(format!("{value}: {why}."))
}
