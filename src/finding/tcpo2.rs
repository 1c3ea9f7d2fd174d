//! Finding `tcpo2`: the oxygen pressure measured through the skin meets a limit.

use super::Entry;
use crate::rules::Basis;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "tcpo2",
    title: "Oxygen pressure of the skin",
    meaning: "The oxygen pressure measured through the skin meets a limit.",
    rule: "Below 20 mmHg stop; 20 to below 40 cleared first with a cap; 40 to below 60 a caution.",
    basis: Basis::Published,
    source: "Rabe 2020, Phlebology 35:447; WIfI grades",
};
