//! Finding `screening-old`: screening answers were given some time ago.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "screening-old",
    title: "Answers are old",
    meaning: "Screening answers were given some time ago.",
    rule: "Over 3 months a caution, over 12 months unanswered; the group today after 7 days, skin and feeling after 3 months.",
    basis: Basis::HouseRule,
    source: "",
};

/// Groups that were asked more than `months` months ago.
pub fn screening_old(place: Place, groups: &[String], months: f64) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("Answered more than {} months ago: {}.", words::whole(months), words::list(groups)))
        .next("Ask again at this visit.", &[Who::Recorder])
}
