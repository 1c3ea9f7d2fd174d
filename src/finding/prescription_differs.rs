//! Finding `prescription-differs`: the class or pressure offered is not the one prescribed.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "prescription-differs",
    title: "Not what was prescribed",
    meaning: "The class or pressure offered is not the one prescribed.",
    rule: "Cleared first by the prescriber.",
    basis: Basis::HouseRule,
    source: "",
};

/// A garment whose class is not stated, beside a prescription; the estimate held against it, as said.
pub fn class_not_stated(place: Place, prescribed: &str, estimate: Option<&str>) -> Finding {
    let held = estimate.map_or_else(String::new, |one| format!(" {one}."));
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("The garment offered states no class; prescribed is {prescribed}.{held}"))
        .next("Ask for its class, or take a garment as prescribed.", &[Who::Role(Role::Prescriber)])
}

/// What is offered and what was prescribed, as said.
pub fn prescription_differs(place: Place, severity: Severity, offered: &str, prescribed: &str) -> Finding {
    Finding::of(&ENTRY, severity, place)
        .say(format!("Offered is {offered}; prescribed is {prescribed}."))
        .next("Ask the prescriber, or take a garment as prescribed.", &[Who::Role(Role::Prescriber)])
}
