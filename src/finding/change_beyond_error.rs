//! Finding `change-beyond-error`: a volume has changed by more than measuring explains.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "change-beyond-error",
    title: "Change beyond the error",
    meaning: "A volume has changed by more than measuring explains.",
    rule: "Beyond 1.96·√2 SD of the setting.",
    basis: Basis::Derived,
    source: "",
};

/// As said.
pub fn change_beyond_error(place: Place, what: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place).say(format!("{what}."))
}
