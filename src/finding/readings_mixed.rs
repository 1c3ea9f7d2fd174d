//! Finding `readings-mixed`: readings were taken in unlike postures.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "readings-mixed",
    title: "Readings of unlike postures",
    meaning: "Readings were taken in unlike postures.",
    rule: "They are not compared with one another.",
    basis: Basis::HouseRule,
    source: "",
};

/// The postures.
pub fn readings_mixed(place: Place, postures: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("The readings were taken in unlike postures: {}.", words::list(postures)))
        .next("Take all readings in one posture.", &[Who::Role(Role::Therapist), Who::Role(Role::Fitter)])
}
