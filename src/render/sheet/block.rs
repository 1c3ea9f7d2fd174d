//! Owns the blocks of a leaf: what stands on it, not how it is drawn.

use super::Scene;

/// One block.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// A heading under the leaf's title.
    Heading(String),
    /// A paragraph.
    Text(Tone, String),
    /// Names with their values.
    Keys(Vec<(String, String)>),
    /// A plain list.
    List(Vec<String>),
    /// Statements, each with boxes to tick before it.
    Ticks {
        /// The words of the boxes: `yes`, `no`.
        boxes: Vec<&'static str>,
        /// The statements.
        items: Vec<String>,
    },
    /// Rows of lines to fill in by hand; each blank has its label.
    Blanks(Vec<Vec<String>>),
    /// A table.
    Table(Table),
    /// A frame around blocks.
    Frame {
        /// How loud it is.
        weight: Weight,
        /// What it is about, as a heading.
        title: String,
        /// What stands in it.
        inside: Vec<Block>,
    },
    /// A drawing.
    Figure(Scene),
}

/// How loud a frame is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// A thin line.
    Thin,
    /// A thick line: nobody may overlook it.
    Thick,
    /// A thick line and the title white on black: a stop.
    Black,
}

/// How loud a paragraph is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// The result.
    Lead,
    /// A sentence to act on.
    Strong,
    /// Everything else.
    Plain,
    /// Remarks.
    Small,
}

/// A table with one head row; the first cell of each row is the row's head.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// What the table shows.
    pub caption: String,
    /// The columns.
    pub columns: Vec<Column>,
    /// The rows, as many cells as columns.
    pub rows: Vec<Vec<String>>,
    /// What room rows leave to write in by hand.
    pub room: Room,
}

/// Room in the rows of a table to write in by hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Room {
    /// None.
    None,
    /// For a number.
    Number,
}

/// A column.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// Its head.
    pub head: String,
    /// Its share of the width, against the other columns' shares.
    pub share: u8,
    /// Whether it holds numbers, which stand at the right so that their points line up.
    pub numbers: bool,
}

impl Column {
    /// A column of words.
    pub(super) fn words(head: &str, share: u8) -> Self {
        Self { head: head.to_owned(), share, numbers: false }
    }

    /// A column of numbers.
    pub(super) fn numbers(head: &str, share: u8) -> Self {
        Self { head: head.to_owned(), share, numbers: true }
    }
}

impl Block {
    pub(super) fn heading(text: &str) -> Self {
        Self::Heading(text.to_owned())
    }

    pub(super) fn text(text: impl Into<String>) -> Self {
        Self::Text(Tone::Plain, text.into())
    }

    pub(super) fn small(text: impl Into<String>) -> Self {
        Self::Text(Tone::Small, text.into())
    }

    pub(super) fn strong(text: impl Into<String>) -> Self {
        Self::Text(Tone::Strong, text.into())
    }

    pub(super) fn list(items: &[&str]) -> Self {
        Self::List(items.iter().map(|item| (*item).to_owned()).collect())
    }

    pub(super) fn blanks(rows: &[&[&str]]) -> Self {
        Self::Blanks(rows.iter().map(|row| row.iter().map(|label| (*label).to_owned()).collect()).collect())
    }
}
