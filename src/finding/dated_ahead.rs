//! Finding `dated-ahead`: a date of the record lies after today.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;
use jiff::civil::Date;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "dated-ahead",
    title: "Dated ahead",
    meaning: "A date of the record lies after today.",
    rule: "Holds the report up; a clearing that is dated ahead does not count.",
    basis: Basis::HouseRule,
    source: "",
};

/// Dates ahead of today, as said (`screening asked on 2031-01-01`).
pub fn dated_ahead(place: Place, each: &[String], today: Date) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("Dated after today ({}): {}.", words::date_short(today), words::list(each)))
        .next("Mend the date.", &[Who::Recorder])
        .open()
}
