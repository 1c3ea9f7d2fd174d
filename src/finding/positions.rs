//! Finding `positions`: marks of both limbs stand at different places under one name.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "positions",
    title: "Marks at other places",
    meaning: "Marks of both limbs stand at different places under one name.",
    rule: "Asked beyond 2 cm; answered by `positions` under `confirmed`.",
    basis: Basis::HouseRule,
    source: "",
};

/// Marks that stand apart, as said (`forearm 14.0 and 18.0 cm`).
pub fn positions(place: Place, each: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("The same mark stands at different places on both limbs: {}.", words::list(each)))
        .next("Measure both limbs at the same places. If it holds, say so in the record.", &[Who::Recorder])
        .asks("positions")
}
