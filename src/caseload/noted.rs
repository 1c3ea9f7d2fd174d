//! Owns what is noted of the id of a row, until the rows before it are known.

use std::ops::Range;

/// The id of a row that was read.
#[derive(Debug)]
pub(super) struct Noted {
    /// The row.
    pub(super) row: u64,
    /// The number made of its id.
    pub(super) id: u64,
    /// Where its cell `problem` stands in what is written; none without that column.
    pub(super) problem: Option<Range<usize>>,
}
