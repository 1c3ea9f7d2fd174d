//! Owns the sheet as text for a line printer.

mod wrap;
mod table;
mod blocks;
mod page;

pub use page::plain;
