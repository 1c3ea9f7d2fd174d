//! Owns the forms of a document: terminal, text sheet, HTML and PDF.
//!
//! Recomputes nothing, omits nothing, decides nothing.
//!
//! Source: ours; each form names its own.

mod paper;
mod sheet;
mod text;
mod html;
mod json;
#[cfg(feature = "pdf")]
mod pdf;

pub use html::html;
pub use json::json;
pub use paper::Paper;
#[cfg(feature = "pdf")]
pub use pdf::{PdfFault, pdf};
pub use sheet::{Language, sheet};
pub use text::{MOST_COLUMNS, plain, terminal};
