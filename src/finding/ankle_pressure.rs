//! Finding `ankle-pressure`: the systolic pressure at the ankle meets a limit.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "ankle-pressure",
    title: "Ankle pressure",
    meaning: "The systolic pressure at the ankle meets a limit.",
    rule: "Below 60 mmHg stop; 60 to below 70 cleared first with a cap.",
    basis: Basis::Published,
    source: "Rabe 2020, Phlebology 35:447",
};

/// One arterial value, judged. `value` as said with its date, `why` what it means.
pub fn ankle_pressure(place: Place, severity: Severity, value: &str, why: &str) -> Finding {
    Finding::of(&ENTRY, severity, place).say(format!("{value}: {why}."))
}
