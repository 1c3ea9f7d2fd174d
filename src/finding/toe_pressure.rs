//! Finding `toe-pressure`: the toe pressure meets a limit.

use super::Entry;
use crate::rules::Basis;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "toe-pressure",
    title: "Toe pressure",
    meaning: "The toe pressure meets a limit.",
    rule: "Below 30 mmHg stop; 30 to below 60 cleared first with a cap.",
    basis: Basis::Published,
    source: "Rabe 2020, Phlebology 35:447; WIfI grades",
};
