//! Finding `arterial-old`: arterial values are old.

use jiff::civil::Date;

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "arterial-old",
    title: "Arterial values are old",
    meaning: "Arterial values are old.",
    rule: "Over 6 months a caution; over 12 months no pass.",
    basis: Basis::HouseRule,
    source: "",
};

/// Values taken `on` a day more than `months` ago; `beyond` the age at which they pass no more; `against` what
/// they weigh against a fitting.
pub fn arterial_old(place: Place, on: Date, months: f64, beyond: bool, against: Option<Severity>) -> Finding {
    let so = match (beyond, against) {
        (true, Some(Severity::Stop)) => "too old; the stop holds until they are measured anew",
        (true, Some(Severity::ClearFirst)) => "too old; what they ask for holds until they are measured anew",
        (true, _) => "they pass no more",
        (false, _) => "they may no longer hold",
    };
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "The arterial values are of {}, more than {} months old: {so}.",
            words::date_short(on),
            words::whole(months)
        ))
        .next("Take them again.", &[Who::Role(Role::Therapist), Who::Role(Role::Vascular)])
}
