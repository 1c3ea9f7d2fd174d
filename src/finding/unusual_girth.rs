//! Finding `unusual-girth`: a girth is outside the usual adult band.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "unusual-girth",
    title: "Unusual girth",
    meaning: "A girth is outside the usual adult band.",
    rule: "Asked, never refused; answered by measuring again and naming the mark under `confirmed`. Off for a child.",
    basis: Basis::HouseRule,
    source: "bands fitted to 507 adults (Heinz et al. 2003, J Stat Educ 11(2))",
};

/// Girths outside their bands, told once for a limb. `marks` holds each as said (`169.0 cm at the wrist (usual 11 to 30 cm)`),
/// `guesses` the probable misreadings, nearest first.
pub fn unusual_girth(place: Place, marks: &[String], guesses: &[String], word: &str) -> Finding {
    let guess = if guesses.is_empty() {
        String::new()
    } else {
        format!(" Probable misreadings, nearest first: {}.", guesses.join("; "))
    };
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("Unusual for an adult: {}.{guess}", words::list(marks)))
        .next("Measure it again. If it holds, say so in the record.", &[Who::Recorder])
        .asks(word)
}
