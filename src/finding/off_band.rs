//! Finding `off-band`: the pressure at the reference is far off the band that was prescribed, else claimed.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "off-band",
    title: "Far off the wanted pressure",
    meaning: "The pressure at the reference is far off the band that was prescribed, else claimed.",
    rule: "Below 0.8 times the low end, above 1.2 times the high end (bounds count), or below 5 mmHg: cleared first by the prescriber.",
    basis: Basis::HouseRule,
    source: "Best 2000, JBJS Br 82-B:116 allowed 20 %",
};

/// What is estimated and against what, as said.
pub fn off_band(place: Place, estimate: &str, band: &str) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say(format!("The estimate is {estimate}, far off {band}."))
        .next(
            "Ask the prescriber; another size or class, or a reading there.",
            &[Who::Role(Role::Prescriber)],
        )
}
