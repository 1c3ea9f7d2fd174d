//! Owns the sheet as HTML: one file, no script, nothing fetched, every text escaped.
//!
//! Source: HTML Living Standard; page heads by the page-margin boxes of CSS Paged Media Level 3.

mod escape;
mod style;
mod svg;
mod table;
mod blocks;
mod page;

pub use page::html;
pub use svg::svg_file;
