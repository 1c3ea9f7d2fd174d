//! Finding `measure-again`: one girth decides by a little whether a size fits.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "measure-again",
    title: "Measure again",
    meaning: "One girth decides by a little whether a size fits.",
    rule: "Every miss is at most 0.5 cm, the missed girth has one tape value, and the size has no certain rise.",
    basis: Basis::HouseRule,
    source: "",
};

/// The misses as said (`0.1 cm too tight at the wrist`), the size that would take it, and what it needs that was
/// not measured at all (`the forearm`).
pub fn measure_again(place: Place, misses: &[String], size: &str, missing: &[String]) -> Finding {
    let those = if misses.len() == 1 { "that girth" } else { "those girths" };
    let also = if missing.is_empty() {
        String::new()
    } else {
        let it_is = if missing.len() == 1 { "it is" } else { "they are" };
        format!(" Measure {} too; {it_is} not in the record.", words::list(missing))
    };
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "Size {size} misses by {}. That is within the error of one tape value: if a second one holds it, the garment is made to measure.",
            words::list(misses)
        ))
        .next(format!("Measure {those} again and write both values.{also}"), &[Who::Recorder])
        .open()
}
