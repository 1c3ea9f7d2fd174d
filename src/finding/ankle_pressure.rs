//! Finding `ankle-pressure`: the systolic pressure at the ankle meets a limit.

use super::Entry;
use crate::rules::Basis;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "ankle-pressure",
    title: "Ankle pressure",
    meaning: "The systolic pressure at the ankle meets a limit.",
    rule: "Below 60 mmHg stop; 60 to below 70 cleared first with a cap.",
    basis: Basis::Published,
    source: "Rabe 2020, Phlebology 35:447",
};
