//! Finding `girth-changed`: one girth has changed otherwise than the rest of the limb since the last visit.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;
use jiff::civil::Date;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "girth-changed",
    title: "Girth changed",
    meaning: "One girth has changed otherwise than the rest of the limb since the last visit.",
    rule: "Asked beyond 2.6 SD of what tape and nature explain (tape at both visits, 1.5 % of natural change); answered under `confirmed`.",
    basis: Basis::HouseRule,
    source: "",
};

/// Marks that changed otherwise than the others, as said (`29.6 cm at the forearm after 25.7 cm`); `guesses` the
/// probable misreadings, nearest first.
pub fn girth_changed(place: Place, marks: &[String], since: Date, guesses: &[String], word: &str) -> Finding {
    let guess = if guesses.is_empty() {
        String::new()
    } else {
        format!(" Probable misreadings, nearest first: {}.", guesses.join("; "))
    };
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "Changed otherwise than the rest of the limb since {}: {}.{guess}",
            words::date_short(since),
            words::list(marks)
        ))
        .next("Measure it again. If it holds, say so in the record.", &[Who::Recorder])
        .asks(word)
}
