//! Finding `girths-old`: the girths were taken some time ago.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;
use jiff::civil::Date;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "girths-old",
    title: "Girths are old",
    meaning: "The girths were taken some time ago.",
    rule: "Over 3 months a caution (house rule), over 6 months measured again (published).",
    basis: Basis::Published,
    source: "trade measuring rule; Derbyshire JAPC",
};

/// The girths are older than `months`; `again` when they no longer serve.
pub fn girths_old(place: Place, taken: Date, months: f64, again: bool) -> Finding {
    let found = Finding::of(&ENTRY, Severity::Caution, place).say(format!(
        "The girths were taken on {}, more than {} months ago.",
        words::date_short(taken),
        words::whole(months)
    ));
    if again {
        found.next("Measure again; older girths serve no order.", &[Who::Recorder]).open()
    } else {
        found.next("Measure again before anything is ordered.", &[Who::Recorder])
    }
}
