//! Owns the one table model.

use super::Align;
use super::align::filled;

/// A table with one head row; the first cell of each row is the row's head.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// What the table shows.
    pub caption: String,
    /// The columns.
    pub columns: Vec<Column>,
    /// The rows, as many cells as columns.
    pub rows: Vec<Row>,
    /// What room rows leave to write in by hand.
    pub room: Room,
}

/// A row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// Its cells.
    pub cells: Vec<String>,
    /// Whether it stands out, as the picked size does.
    pub strong: bool,
}

/// Room in the rows of a table to write in by hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Room {
    /// None.
    None,
    /// For a number or a signature.
    Writing,
}

/// A column.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Column {
    /// Its head.
    pub head: String,
    /// The unit of its figures, under the head; empty where it has none.
    pub unit: String,
    /// How its cells stand under one another.
    pub align: Align,
    /// Least share of the width in per cent, for columns to write in; 0 leaves it to the text.
    pub least: u8,
}

impl Column {
    /// A column of words.
    pub fn words(head: impl Into<String>) -> Self {
        Self { head: head.into(), unit: String::new(), align: Align::Words, least: 0 }
    }

    /// A column of numbers with their unit.
    pub fn numbers(head: impl Into<String>, unit: &str) -> Self {
        Self { align: Align::Point, unit: unit.to_owned(), ..Self::words(head) }
    }

    /// A column of ranges with their unit.
    pub fn ranges(head: impl Into<String>, unit: &str) -> Self {
        Self { align: Align::Dash, unit: unit.to_owned(), ..Self::words(head) }
    }

    /// The same with a least share of the width, in per cent.
    #[must_use]
    pub fn at_least(mut self, percent: u8) -> Self {
        self.least = percent;
        self
    }

    /// Head and unit as one text: `Girth, cm`.
    pub fn title(&self) -> String {
        if self.unit.is_empty() { self.head.clone() } else { format!("{}, {}", self.head, self.unit) }
    }
}

impl Table {
    /// A table without room to write in.
    pub fn new(caption: impl Into<String>, columns: Vec<Column>) -> Self {
        Self { caption: caption.into(), columns, rows: Vec::new(), room: Room::None }
    }

    /// Adds a row.
    pub fn push(&mut self, cells: Vec<String>) {
        self.rows.push(Row { cells, strong: false });
    }

    /// The cells of one column.
    pub fn column(&self, place: usize) -> impl Iterator<Item = &str> {
        self.rows.iter().map(move |row| row.cells.get(place).map(String::as_str).unwrap_or_default())
    }

    /// The cells, row by row, those of figures filled up at the right so that, set from the right, they
    /// stand at the point.
    pub fn filled(&self) -> Vec<Vec<String>> {
        let columns: Vec<Vec<String>> = self
            .columns
            .iter()
            .enumerate()
            .map(|(place, column)| filled(&self.column(place).collect::<Vec<_>>(), column.align))
            .collect();
        (0..self.rows.len())
            .map(|row| columns.iter().map(|column| column.get(row).cloned().unwrap_or_default()).collect())
            .collect()
    }
}
