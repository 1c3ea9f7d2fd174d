//! Finding `worsening`: the swelling has grown since the last visit.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "worsening",
    title: "Swelling has grown",
    meaning: "The swelling has grown since the last visit.",
    rule: "More than the detectable change a caution; twice that, or at two visits running, cleared first by a therapist or doctor.",
    basis: Basis::HouseRule,
    source: "detectable change of repeated leg volumes, Lymphat Res Biol 2022",
};

/// Days within which a growth is asked about as a sudden one (house rule: the clot that is asked about comes over hours
/// or days, and two visits of one week lie within two).
pub const SUDDEN_DAYS: i32 = 14;

/// As said (`the excess rose from 10 to 20 %`), with the detectable change; `days` since the visit before where they are
/// few enough to ask for a sudden cause again.
pub fn worsening(place: Place, severity: Severity, what: &str, days: Option<i32>) -> Finding {
    let sudden = days.map_or_else(String::new, |days| {
        let days = words::counted(days.unsigned_abs() as usize, "day", "days");
        format!(" It came within {days}: ask again about a clot and an infection.")
    });
    Finding::of(&ENTRY, severity, place).say(format!("The swelling has grown: {what}.")).next(
        format!(
            "Find out why and treat it before a new garment is chosen; a worn-out garment is still replaced.{sudden}"
        ),
        &[Who::Role(Role::Therapist), Who::Role(Role::Physician)],
    )
}
