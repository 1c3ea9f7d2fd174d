//! Finding `not-judged`: measures are missing, so no size can be named.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "not-judged",
    title: "Size not judged",
    meaning: "Measures are missing, so no size can be named.",
    rule: "Sizes plainly outside stay outside; what to measure is named for the others.",
    basis: Basis::HouseRule,
    source: "",
};

/// Measures that are missing, and the sizes still open.
pub fn not_judged(place: Place, missing: &[String], open: &[String]) -> Finding {
    let stay = if open.len() == 1 { "stays" } else { "stay" };
    let it = if missing.len() == 1 { "it" } else { "them" };
    let sizes = if open.len() == 1 { "size" } else { "sizes" };
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "Not measured: {}. Without {it} {sizes} {} {stay} open.",
            words::list(missing),
            words::list(open)
        ))
        .next(format!("Measure {}.", words::list(missing)), &[Who::Recorder])
        .open()
}
