//! Finding `style-differs`: the style offered is not the one prescribed.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "style-differs",
    title: "Another style",
    meaning: "The style offered is not the one prescribed.",
    rule: "A caution.",
    basis: Basis::HouseRule,
    source: "",
};

/// What is offered and what was prescribed.
pub fn style_differs(place: Place, offered: &str, prescribed: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("The style is {offered}; prescribed is {prescribed}."))
        .next("Ask the prescriber whether this style serves.", &[Who::Role(Role::Prescriber)])
}
