//! Finding `thinner`: the affected limb is thinner than the other one.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "thinner",
    title: "Affected side thinner",
    meaning: "The affected limb is thinner than the other one.",
    rule: "Asked when the mean of ln(affected/other) over shared marks is below -4 %; answered by `thinner` under `confirmed`.",
    basis: Basis::HouseRule,
    source: "",
};

/// The affected limb is thinner by `percent` on the mean.
pub fn thinner(place: Place, percent: f64) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "The affected limb is {} thinner than the other one on the mean: the sides may be exchanged.",
            words::percent(percent)
        ))
        .next("Look at both sides again. If it holds, say so in the record.", &[Who::Recorder])
        .asks("thinner")
}
