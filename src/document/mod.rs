//! Owns what a page is made of: blocks, tables, drawings as shapes, leaves, the one way of breaking
//! text into lines and of lining figures up. Terminal, text sheet, HTML and PDF draw this and nothing
//! else.
//!
//! Knows no garment and no client; decides nothing; prints nothing.
//!
//! Source: ours.

mod wrap;
mod held;
mod align;
mod scene;
mod bars;
mod letters;
mod figure;
mod table;
mod entry;
mod tick;
mod blank;
mod block;
mod leaf;
mod sheet;

pub use align::{Align, Lined};
pub use bars::{Bar, Bars, Reach};
pub use blank::Blank;
pub use block::{Block, Part, Tone, Weight};
pub use entry::Entry;
pub use figure::Figure;
pub use held::{FIGURE_SPACE, HELD, held, hold_units};
pub use leaf::{Head, Leaf, Reader};
pub use letters::Letters;
pub use scene::{Anchor, Ink, Pen, Scene, Shape};
pub use sheet::Sheet;
pub use table::{Column, Room, Row, Table};
pub use tick::Tick;
pub use wrap::wrap;
