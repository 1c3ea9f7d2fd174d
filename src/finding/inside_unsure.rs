//! Finding `inside-unsure`: by tape error alone the girths may well lie outside the size.

use super::{Entry, Finding, Place, Who};
use crate::anatomy::Landmark;
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "inside-unsure",
    title: "Size unsure by the tape",
    meaning: "By tape error alone the girths may well lie outside the size.",
    rule: "The chance that every girth lies inside is below 0.5.",
    basis: Basis::HouseRule,
    source: "",
};

/// The chance that every girth lies inside, and where the least margin is.
pub fn inside_unsure(place: Place, chance: f64, closest: Landmark) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "By the error of the tape the chance that every girth lies inside this size is {}.",
            words::chance(chance)
        ))
        .next(
            format!("Measure the girth {} once more and write both values.", words::at(closest)),
            &[Who::Recorder],
        )
}
