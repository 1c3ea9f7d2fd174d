//! Finding `worsening`: the swelling has grown since the last visit.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "worsening",
    title: "Swelling has grown",
    meaning: "The swelling has grown since the last visit.",
    rule: "More than the detectable change a caution; twice that, or at two visits running, cleared first by a therapist or doctor.",
    basis: Basis::HouseRule,
    source: "detectable change of repeated leg volumes, Lymphat Res Biol 2022",
};

/// As said (`the excess rose from 10 to 20 %`), with the detectable change.
pub fn worsening(place: Place, severity: Severity, what: &str) -> Finding {
    Finding::of(&ENTRY, severity, place).say(format!("The swelling has grown: {what}.")).next(
        "Find out why and treat it before a new garment is chosen; a worn-out garment is still replaced.",
        &[Who::Role(Role::Therapist), Who::Role(Role::Physician)],
    )
}
