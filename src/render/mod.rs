//! Owns the forms of a report: terminal, sheet as text, HTML and PDF, all drawn from one document model.
//!
//! Recomputes nothing, omits nothing, decides nothing.
//!
//! Source: ours; each form names its own.

mod paper;
mod limb_outline;
mod limb_sketch;
mod blank;
mod course_plot;
mod sheet;
mod report;
mod volume_page;
mod cover_page;
mod text;
mod html;
mod json;
#[cfg(feature = "pdf")]
mod pdf;

pub use blank::{blank_form, measuring_order, where_is};
pub use cover_page::cover_page;
pub use html::{html, svg_file};
pub use json::json;
pub use paper::Paper;
#[cfg(feature = "pdf")]
pub use pdf::{PdfFault, pdf};
pub use report::terminal_report;
pub use sheet::{Language, sheet};
pub use text::{MOST_COLUMNS, plain, terminal};
pub use volume_page::{volume_page, volume_scene, volume_sheet};
