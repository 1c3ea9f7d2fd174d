//! Finding `measure-again`: one girth decides by a little whether a size fits.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "measure-again",
    title: "Measure again",
    meaning: "One girth decides by a little whether a size fits.",
    rule: "Every miss is at most 0.5 cm and the missed girth has one tape value; of several such sizes rather one without a certain rise. Where each of them rises it is said.",
    basis: Basis::HouseRule,
    source: "",
};

/// The misses as said (`0.1 cm too tight at the wrist`), the size that would take it, and what it needs that was
/// not measured at all (`the forearm`); `rises` where its pressure rises for certain by the girths as they are.
pub fn measure_again(
    place: Place,
    misses: &[String],
    size: &str,
    missing: &[String],
    rises: bool,
) -> Finding {
    let those = if misses.len() == 1 { "that girth" } else { "those girths" };
    let also = if missing.is_empty() {
        String::new()
    } else {
        let it_is = if missing.len() == 1 { "it is" } else { "they are" };
        format!(" Measure {} too; {it_is} not in the record.", words::list(missing))
    };
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "Size {size} misses by {}. That is within the error of one tape value: if a second one holds it, the garment is made to measure.{}",
            words::list(misses),
            if rises {
                " By these girths its pressure rises for certain as well: while it does, it is made to measure either way."
            } else {
                ""
            }
        ))
        .next(format!("Measure {those} again and write both values.{also}"), &[Who::Recorder])
        .open()
}
