//! Owns the fitting sheet: page 1 that stands alone, an order where one is made to measure, an annex,
//! and the client's pages. Terminal and paper share how a part, a margin and a pressure are said.
//!
//! Recomputes nothing: every figure is the report's printed text.

pub(in crate::render) mod wording;
mod subject;
mod language;
mod band;
mod about;
mod order_box;
mod clear;
mod marks;
mod bars;
mod axis;
mod outline;
mod plot;
mod closing;
mod made;
mod ranking;
mod annex;
mod client;
mod build;

pub(super) use annex::{fall_entries, volume as volume_blocks};
pub(super) use bars::bars;
pub use build::sheet;
pub use language::Language;
pub(super) use marks::{amount, pressure};
pub(super) use ranking::ranking;
pub(super) use wording::{EMPTY, sentence, text};
