//! Finding `infection-recent`: the girths were taken less than four weeks after an infection.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;
use jiff::civil::Date;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "infection-recent",
    title: "Infection not long ago",
    meaning: "The girths were taken before an infection, or less than four weeks after one.",
    rule: "A caution: measured again before made to measure.",
    basis: Basis::HouseRule,
    source: "",
};

/// An infection on `on`, less than four weeks before measuring.
pub fn infection_recent(place: Place, on: Date) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "The girths were taken less than four weeks after an infection ({}).",
            words::date_short(on)
        ))
        .next("Measure again before anything is made to measure.", &[Who::Recorder])
}

/// An infection on `on`, after the girths were taken.
pub fn infection_since(place: Place, on: Date) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("An infection came after the girths were taken ({}).", words::date_short(on)))
        .next("Measure again before anything is ordered.", &[Who::Recorder])
}
