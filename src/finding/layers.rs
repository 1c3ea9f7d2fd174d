//! Finding `layers`: pieces lie over one another.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "layers",
    title: "Pieces over one another",
    meaning: "Pieces lie over one another.",
    rule: "The plain sum is an upper estimate; two stockings gave 0.83 to 0.85 of it.",
    basis: Basis::Published,
    source: "Ann Vasc Dis 2012;5:435",
};

/// Two parts of a set at one mark: their sum in full, mmHg, and at the least share that was measured;
/// none where a piece is known by its least only.
pub fn of_set(place: Place, pieces: &[String], at: &str, least: f64, most: Option<f64>) -> Finding {
    let together = most.map_or_else(
        || format!("together at least {}", words::mmhg(least)),
        |most| format!("together about {} to {}", words::whole(least), words::mmhg(most)),
    );
    Finding::of(&ENTRY, Severity::Note, place).say(format!(
        "Parts of the set lie over one another {at}, {together}, which no class states: {}.",
        words::list(pieces)
    ))
}

/// Two parts of a set at a mark where one of them is known by its stretch only; `unknown` = which, as said.
pub fn of_set_unknown(place: Place, pieces: &[String], at: &str, unknown: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place).say(format!(
        "Parts of the set lie over one another {at}: {}. What they press together is not known without the fabric curve of {}.",
        words::list(pieces),
        words::list(unknown)
    ))
}

/// Which pieces and where, as said: `at the wrist`, `from the wrist to the forearm`.
pub fn layers(place: Place, pieces: &[String], over: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place).say(format!(
        "Pieces lie over one another {over}: {}. Their sum is an upper estimate; two stockings gave about 0.83 to 0.85 of it.",
        words::list(pieces)
    ))
}
