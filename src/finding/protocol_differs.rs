//! Finding `protocol-differs`: visits were measured in different ways.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;
use jiff::civil::Date;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "protocol-differs",
    title: "Measured another way",
    meaning: "Visits were measured in different ways.",
    rule: "Method, spacing, start or posture differ: a new series begins, no difference is printed.",
    basis: Basis::HouseRule,
    source: "",
};

/// What differs, as said.
pub fn protocol_differs(place: Place, since: Date, what: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place)
        .say(format!(
            "Measured otherwise than on {}: {}. No difference is worked out between the two.",
            words::date_short(since),
            words::list(what)
        ))
        .next("Keep to one way of measuring.", &[Who::Recorder])
}
