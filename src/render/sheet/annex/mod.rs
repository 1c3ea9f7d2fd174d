//! Owns the annex of the fitter's pages: the fall in words, other sizes, both limbs, every answer,
//! the trial fitting, bases and limits.

mod fall;
mod others;
mod volume;
mod answers;
mod seen;

pub(super) use answers::{answers, limits};
pub(super) use fall::fall;
pub(in crate::render) use fall::fall_entries;
pub(super) use others::others;
pub(super) use seen::seen;
pub(in crate::render) use volume::volume;
