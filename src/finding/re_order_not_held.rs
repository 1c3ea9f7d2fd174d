//! Finding `re-order-not-held`: the record rests on an earlier one whose answers do not count.

use jiff::civil::Date;

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "re-order-not-held",
    title: "Earlier answers not counted",
    meaning: "The record states that nothing has changed since an earlier one, but the answers of that day do not count.",
    rule: "An earlier record of this run, not older than 12 months, with all its groups answered, an adult, no infection and no worsening since (a limb that grew beyond measuring counts where the other one was not measured), arterial values not run out, and `changes` and `wear` both absent; else every group is asked again.",
    basis: Basis::HouseRule,
    source: "",
};

/// `why` says why, as a clause.
pub fn re_order_not_held(place: Place, since: Date, why: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("The answers of {} do not count for this order: {why}.", words::date_short(since)))
        .next("Ask every group again and write it down.", &[Who::Recorder])
}
