//! Owns the keys of every file kind as data: name, form, one correct line, meaning. They serve the
//! reader's messages, the templates of `new` and the JSON Schemas.
//!
//! Does not read files.

mod form;
mod key;
mod block;
mod shared;
mod record;
mod chart;
mod garment;
mod fabric;
mod scheme;
mod rules;
mod visits;

pub use block::Block;
pub use chart::CHART;
pub use fabric::FABRIC;
pub use form::Form;
pub use garment::{GARMENT, WRAP};
pub use key::{Key, Need};
pub use record::RECORD;
pub use rules::RULES;
pub use scheme::SCHEME;
pub use visits::VISITS;
