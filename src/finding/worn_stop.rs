//! Finding `worn-stop`: a stop stands against a garment on a limb on which one is in use.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "worn-stop",
    title: "Stop with a garment in use",
    meaning: "What stops a fitting speaks against the garment that is in use on the limb as well.",
    rule: "A stop of screening or arterial values while the record lists a garment in use on that limb.",
    basis: Basis::HouseRule,
    source: "",
};

/// `garments` as printed, at least one.
pub fn worn_stop(place: Place, garments: &[String]) -> Finding {
    let it_is = if garments.len() == 1 { "it is" } else { "they are" };
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("A stop stands, and on this limb is in use: {}.", words::list(garments)))
        .next(
            format!(
                "Settle with the stop whether {it_is} worn on; the client's page says what to do until then."
            ),
            &[Who::Role(Role::Therapist), Who::Role(Role::Physician)],
        )
}
