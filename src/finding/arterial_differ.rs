//! Finding `arterial-differ`: the stated index differs from ankle over brachial pressure.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "arterial-differ",
    title: "Index and quotient differ",
    meaning: "The stated index differs from ankle over brachial pressure.",
    rule: "Asked beyond 0.15; both are judged, the worse counts; answered by `arterial` under `confirmed`.",
    basis: Basis::HouseRule,
    source: "",
};

/// The stated index and the quotient.
pub fn arterial_differ(place: Place, stated: f64, quotient: f64) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "The stated index is {}, ankle over brachial pressure gives {}.",
            words::decimal(stated, 2),
            words::decimal(quotient, 2)
        ))
        .next("Look at the values again. If both hold, say so in the record.", &[Who::Recorder])
        .asks("arterial")
}
