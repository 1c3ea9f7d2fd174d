//! Finding `other-limb-not-measured`: the other limb was not measured again.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;
use jiff::civil::Date;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "other-limb-not-measured",
    title: "Other limb not measured again",
    meaning: "The other limb was not measured again.",
    rule: "A reduction of excess needs it at both visits.",
    basis: Basis::Published,
    source: "Cochrane CD003475",
};

/// Said of a visit without the other limb.
pub fn other_limb_not_measured(place: Place, on: Date) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place)
        .say(format!("The other limb was not measured on {}, so a change of the excess would not be reliable and is not printed.", words::date_short(on)))
        .next("Measure both limbs at every visit.", &[Who::Recorder])
}
