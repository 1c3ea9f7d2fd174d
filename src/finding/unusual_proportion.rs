//! Finding `unusual-proportion`: two girths stand in an unusual proportion.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "unusual-proportion",
    title: "Unusual proportion",
    meaning: "Two girths stand in an unusual proportion.",
    rule: "Asked, never refused; answered under `confirmed`. Off for a child.",
    basis: Basis::HouseRule,
    source: "bands fitted to 507 adults (Heinz et al. 2003, J Stat Educ 11(2))",
};

/// Girths in unusual proportions, told once for a limb.
pub fn unusual_proportion(place: Place, pairs: &[String], guesses: &[String], word: &str) -> Finding {
    let guess = if guesses.is_empty() {
        String::new()
    } else {
        format!(" Probable misreadings, nearest first: {}.", guesses.join("; "))
    };
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("Unusual proportion: {}.{guess}", words::list(pairs)))
        .next("Measure both again. If they hold, say so in the record.", &[Who::Recorder])
        .asks(word)
}
