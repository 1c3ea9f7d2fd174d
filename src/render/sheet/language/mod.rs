//! Owns the languages of the client's pages, one data file each.
//!
//! Source: our own words; the German ones are a draft, to be reviewed by a clinician who speaks it.

mod choice;
mod texts;

pub use choice::Language;
pub(super) use texts::{Item, Texts};
