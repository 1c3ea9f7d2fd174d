//! Owns places in files, problems of input, the keys of every file kind, and the reading of YAML and
//! tables (CSV, spreadsheets): the only users of `std::fs`, `serde_yaml`, `csv` and `calamine`.
//!
//! Does not compute, and does not know what a record or a chart means.

pub mod keys;
mod file_kind;
mod text;
mod problem;
mod lines;
mod source;
mod node;
mod before;
mod yaml;
mod told_once;
mod reader;
mod item;
mod fields;
mod suggest;
mod agree;
mod draft;
mod landmarks;
mod cell;
mod table;
mod ods_merged;
mod sheet;
mod schema;
mod row_blocks;
mod row_cells;

pub use agree::keys_asked;
pub use cell::plain_numbers;
pub use draft::Draft;
pub use fields::Fields;
pub use file_kind::FileKind;
pub use item::{Item, YesNo};
pub use landmarks::landmark_fault;
pub use node::{Entry, Kind, Node, Spot};
pub use problem::{MOST_PROBLEMS, Place, Problem};
pub use reader::{Named, Reader};
pub use row_blocks::{RowBlock, RowBlocks};
pub use row_cells::RowCells;
pub use schema::schema;
pub use source::{Source, files_read, no_plain_file};
pub use suggest::nearest_word;
pub use table::{Row, Table};
pub use text::{Text, TextFault, escaped};
