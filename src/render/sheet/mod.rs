//! Owns the fitting sheet as a plain document: leaves of headings, paragraphs, tables, ticks, frames
//! and one drawing. HTML, PDF and text draw this document and nothing else.
//!
//! Recomputes nothing: every figure is the report's printed text.

mod block;
mod scene;
mod document;
mod wording;
mod subject;
mod result;
mod offered;
mod marks;
mod outline;
mod axis;
mod plot;
mod fall;
mod others;
mod closing;
mod client;
mod build;

pub use block::{Block, Column, Room, Table, Tone, Weight};
pub use build::sheet;
pub use document::{Head, Leaf, Reader, Sheet};
pub use scene::{Anchor, Ink, Pen, Scene, Shape};
