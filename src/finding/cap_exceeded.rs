//! Finding `cap-exceeded`: the pressure lies above the highest that was allowed.

use super::{Entry, Finding, Place};
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

/// The pressure `what` (`the class reaches 32 mmHg`) above the cap.
pub fn cap_exceeded(place: Place, what: &str, cap: f64) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say(format!("At most {} is allowed on this leg, but {what}.", words::mmhg(cap)))
        .next("Another class is needed; nobody can clear this garment under that cap.", &[])
}
