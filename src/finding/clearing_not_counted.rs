//! Finding `clearing-not-counted`: a clearing is recorded that does not count.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "clearing-not-counted",
    title: "Clearing not counted",
    meaning: "A clearing or a refusal is recorded that does not count.",
    rule: "Wrong role, a protocol that is not named where one is asked for, dated ahead or before the answer, run out, without the cap or the referral that the item asks for, or for something that is not there.",
    basis: Basis::HouseRule,
    source: "",
};

/// `what` names entry and item (`clearing of paralysis`), `why` says why it does not count.
pub fn clearing_not_counted(place: Place, what: &str, why: &str, severity: Severity) -> Finding {
    Finding::of(&ENTRY, severity, place)
        .say(format!("The {what} does not count: {why}."))
        .next("Mend the entry, or ask someone who may clear it.", &[Who::Recorder])
}
