//! Finding `cap-exceeded`: the pressure lies above the highest that was allowed.

use super::{Entry, Finding, Place};
use crate::anatomy::Limb;
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "cap-exceeded",
    title: "Above the cap",
    meaning: "The pressure lies above the highest that was allowed.",
    rule: "Held against the class's upper end on every chart and the estimate on the chosen size; no clearing lifts it.",
    basis: Basis::HouseRule,
    source: "",
};

/// The pressure `what` (`its class reaches 32 mmHg`) above the cap, on an arm or a leg.
pub fn cap_exceeded(place: Place, limb: Limb, what: &str, cap: f64) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say(format!("At most {} is allowed on this {}, but {what}.", words::mmhg(cap), limb.name()))
        .next("Another class is needed; nobody can clear this garment under that cap.", &[])
}

/// Under a cap, a garment whose pressure nothing tells.
pub fn not_known(place: Place, limb: Limb, cap: f64) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say(format!(
            "At most {} is allowed on this {}, and what this garment presses is not known: its class is missing, or its fabric.",
            words::mmhg(cap),
            limb.name()
        ))
        .next("Write the garment's class, or its fabric and relaxed girths; nobody can clear it without.", &[])
}
