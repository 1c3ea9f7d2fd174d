//! Owns the blocks of a page: what stands on it, not how it is drawn.

use super::{Blank, Entry, Figure, Table, Tick};

/// One block.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// A heading under the leaf's title.
    Heading(String),
    /// A paragraph.
    Text(Tone, String),
    /// Names with their values beside them, the values in one column.
    Keys(Vec<Entry>),
    /// Names, each with what is said of it behind it, further lines under the first.
    Entries(Vec<Entry>),
    /// A plain list.
    List(Vec<String>),
    /// Statements, each with boxes to tick before it.
    Ticks {
        /// The words of the boxes, such as `yes`, `no`; none for one box without a word.
        boxes: Vec<String>,
        /// The statements.
        items: Vec<Tick>,
    },
    /// Rows of lines to fill in by hand.
    Blanks(Vec<Vec<Blank>>),
    /// An empty square, such as one for a label to stick on.
    Square {
        /// What goes there.
        label: String,
        /// Its height, in lines of writing of 14 points.
        lines: u8,
    },
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
    /// Blocks beside one another; under one another where there is no room.
    Columns(Vec<Part>),
    /// Blocks that stay on one page.
    Together(Vec<Block>),
    /// A drawing.
    Figure(Figure),
    /// Lines as they are, to be copied.
    Verbatim(String),
}

/// One of the columns that stand beside one another.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its share of the width, against the other columns' shares.
    pub share: u8,
    /// What stands in it.
    pub blocks: Vec<Block>,
}

/// How loud a frame is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// A thin line.
    Thin,
    /// A thick line: nobody may overlook it.
    Thick,
    /// A thick line and the title white on black.
    Black,
}

/// How loud a paragraph is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// The result.
    Lead,
    /// A sentence to act on; it stays with what follows.
    Strong,
    /// Everything else.
    Plain,
    /// Remarks.
    Small,
}

impl Block {
    /// A heading.
    pub fn heading(text: impl Into<String>) -> Self {
        Self::Heading(text.into())
    }

    /// The result.
    pub fn lead(text: impl Into<String>) -> Self {
        Self::Text(Tone::Lead, text.into())
    }

    /// A sentence to act on.
    pub fn strong(text: impl Into<String>) -> Self {
        Self::Text(Tone::Strong, text.into())
    }

    /// A paragraph.
    pub fn text(text: impl Into<String>) -> Self {
        Self::Text(Tone::Plain, text.into())
    }

    /// A remark.
    pub fn small(text: impl Into<String>) -> Self {
        Self::Text(Tone::Small, text.into())
    }

    /// One name with its text.
    pub fn entry(name: impl Into<String>, said: impl Into<String>) -> Self {
        Self::Entries(vec![Entry::new(name, said)])
    }

    /// A plain list.
    pub fn list<S: Into<String>>(items: impl IntoIterator<Item = S>) -> Self {
        Self::List(items.into_iter().map(Into::into).collect())
    }

    /// Rows of empty lines, each with its label.
    pub fn blanks(rows: &[&[&str]]) -> Self {
        Self::Blanks(rows.iter().map(|row| row.iter().map(|label| Blank::new(*label)).collect()).collect())
    }

    /// A frame.
    pub fn frame(weight: Weight, title: impl Into<String>, inside: Vec<Self>) -> Self {
        Self::Frame { weight, title: title.into(), inside }
    }

    /// Two columns with their shares of the width.
    pub fn beside(left: (u8, Vec<Self>), right: (u8, Vec<Self>)) -> Self {
        Self::Columns(vec![Part { share: left.0, blocks: left.1 }, Part { share: right.0, blocks: right.1 }])
    }
}
