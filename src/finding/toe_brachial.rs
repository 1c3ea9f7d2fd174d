//! Finding `toe-brachial`: the toe-brachial index meets a limit.

use super::Entry;
use crate::rules::Basis;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "toe-brachial",
    title: "Toe-brachial index",
    meaning: "The toe-brachial index meets a limit.",
    rule: "Below 0.7 cleared first with a cap; it does not decide a high ankle index.",
    basis: Basis::Memory,
    source: "",
};
