//! Finding `abpi`: the ankle-brachial pressure index meets a limit.

use super::Entry;
use crate::rules::Basis;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "abpi",
    title: "Ankle-brachial pressure index",
    meaning: "The ankle-brachial pressure index meets a limit.",
    rule: "Below 0.6 stop; 0.6 to below 0.8 cleared first with a written cap; 0.8 to 1.3 passes; above 1.3 or not compressible is decided by toe pressure or oxygen pressure.",
    basis: Basis::Published,
    source: "Rabe 2020, Phlebology 35:447; Team 2019, WP&R J 27:74",
};
