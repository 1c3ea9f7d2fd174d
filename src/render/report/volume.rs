//! Owns volume and course in the terminal report: the same blocks as on the sheet.

use crate::document::Block;
use crate::render::sheet::volume_blocks;
use crate::report::Report;

/// Both limbs, volume, course.
pub(super) fn volume(report: &Report) -> Vec<Block> {
    volume_blocks(report)
}
