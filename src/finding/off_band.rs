//! Finding `off-band`: the pressure at the reference is far off the band that was prescribed, else claimed.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "off-band",
    title: "Far off the wanted pressure",
    meaning: "The pressure at the reference is far off the band that was prescribed, else claimed.",
    rule: "Below 0.8 times the low end, above 1.2 times the high end (bounds count), or below 5 mmHg: cleared first by the prescriber.",
    basis: Basis::HouseRule,
    source: "Best 2000, JBJS Br 82-B:116 allowed 20 %",
};

/// What is known (`The estimate is 39 mmHg at the wrist`), and the band it is far off.
pub fn off_band(place: Place, said: &str, band: &str) -> Finding {
    found(place, format!("{said}, far off {band}."))
}

/// What is known, below the `least` mmHg at which anything is fitted.
pub fn too_low(place: Place, said: &str, least: f64) -> Finding {
    found(place, format!("{said}, under {}: hardly any compression.", words::mmhg(least)))
}

fn found(place: Place, message: String) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place).say(message).next(
        "Ask the prescriber; another size or class, or a reading there.",
        &[Who::Role(Role::Prescriber)],
    )
}
