//! Finding `toe-brachial`: the toe-brachial index meets a limit.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "toe-brachial",
    title: "Toe-brachial index",
    meaning: "The toe-brachial index meets a limit.",
    rule: "Below 0.7 cleared first with a cap; it does not decide a high ankle index.",
    basis: Basis::Memory,
    source: "",
};

/// One arterial value, judged. `value` as said with its date, `why` what it means.
pub fn toe_brachial(place: Place, severity: Severity, value: &str, why: &str) -> Finding {
    Finding::of(&ENTRY, severity, place).say(format!("{value}: {why}."))
}
