//! Finding `set-high`: pieces of a set together lie above 60 mmHg where they overlap.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "set-high",
    title: "Very high where pieces overlap",
    meaning: "Pieces of a set together lie above 60 mmHg where they overlap.",
    rule: "The plain sum at the shared mark: cleared first by the prescriber.",
    basis: Basis::HouseRule,
    source: "",
};

/// The sum at the shared mark and the pieces as said.
///
/// `sum` = mmHg, and whether one of the pieces is known by its least only.
pub fn set_high(place: Place, mark: &str, sum: (f64, bool), pieces: &[String], limit: f64) -> Finding {
    let (sum, bound) = sum;
    let press = if bound { "may press more than" } else { "press up to" };
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say(format!(
            "Pieces that lie over one another {mark} {press} {} together, above {}: {}.",
            words::mmhg(sum),
            words::mmhg(limit),
            words::list(pieces)
        ))
        .next(
            "Ask the prescriber; a shorter piece or a lower class serves one of the two.",
            &[Who::Role(Role::Prescriber)],
        )
}
