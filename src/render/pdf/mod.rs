//! Owns the sheet as PDF.

use crate::render::Paper;
use crate::render::sheet::Sheet;

/// The sheet as PDF.
pub fn pdf(_: &Sheet, _: Paper) -> Result<Vec<u8>, &'static str> {
    Err("not yet")
}
