//! Owns documents as lines of letters: for a terminal, and for a line printer.
//!
//! Source: ours.

mod look;
mod columns;
mod bars;
mod table;
mod blocks;
mod plain;
mod terminal;

pub use plain::plain;
pub use terminal::{MOST_COLUMNS, terminal};
