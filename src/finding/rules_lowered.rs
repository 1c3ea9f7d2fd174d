//! Finding `rules-lowered`: the local rules lower what the shipped rules ask.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "rules-lowered",
    title: "Local rules are milder",
    meaning: "The local rules lower what the shipped rules ask.",
    rule: "Every report opens with what a rules file lowers, and why.",
    basis: Basis::HouseRule,
    source: "",
};

/// What is lowered, as said, with the file's reason.
pub fn rules_lowered(place: Place, what: &str, why: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place).say(format!("Local rules: {what}. Reason given: {why}."))
}
