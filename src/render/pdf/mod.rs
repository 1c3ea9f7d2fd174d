//! Owns the sheet as a tagged PDF, built to PDF/UA-1 and PDF/A-2a by the writer's own validator.
//!
//! The work goes in two steps, since the writer's pages borrow its document: the sheet is laid out as
//! a display list and a tag tree (`layout`), then both are written (`write`).
//!
//! Source: ISO 14289-1 and ISO 19005-2, as the writer checks them; font `DejaVu` Sans (Bitstream Vera
//! and Arev licences).

mod characters;
mod fault;
mod fonts;
mod display;
mod layout;
mod lines;
mod table;
mod figure;
mod blocks;
mod columns;
mod head;
mod draw;
mod write;

pub use fault::PdfFault;
pub use write::pdf;
