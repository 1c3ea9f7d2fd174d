//! Finding `weight-changed`: the weight has changed since the last record.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;
use jiff::civil::Date;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "weight-changed",
    title: "Weight changed",
    meaning: "The weight has changed since the last record.",
    rule: "A twentieth or more asks for measuring again.",
    basis: Basis::HouseRule,
    source: "",
};

/// From `was` to `now`, kg.
pub fn weight_changed(place: Place, was: f64, now: f64, on: Date) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "The weight is {} after {} on {}.",
            words::kilogram(now),
            words::kilogram(was),
            words::date_short(on)
        ))
        .next("Use girths of today only.", &[Who::Recorder])
}
