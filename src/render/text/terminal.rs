//! Owns blocks for a terminal.

use super::blocks::groups;
use super::look::Look;
use crate::document::Block;

/// Fewest columns that a page is laid out for (house rule: narrower terminals wrap by themselves).
const FEWEST_COLUMNS: usize = 60;
/// Most columns that a page uses (house rule: longer lines are hard to read).
pub const MOST_COLUMNS: usize = 120;

/// The blocks for a terminal of `width` columns, kept within 60 to 120; without colour. No line ends in
/// blanks, no two empty lines follow one another.
pub fn terminal(blocks: &[Block], width: usize) -> String {
    let width = width.clamp(FEWEST_COLUMNS, MOST_COLUMNS);
    let mut out = String::new();
    let mut empty = true;
    for line in groups(blocks, width, Look::Terminal).iter().flatten() {
        let line = line.trim_end();
        if line.is_empty() && empty {
            continue;
        }
        empty = line.is_empty();
        out.push_str(line);
        out.push('\n');
    }
    out.truncate(out.trim_end().len());
    out.push('\n');
    out
}
