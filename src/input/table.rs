//! Owns the use of `csv`: a table with a header, each cell with its line and column. Knows no
//! columns.
//!
//! Lines are counted here, not by the reader, so that files with any line ends report alike.

use super::{Place, Problem, Source};

/// A table with a header.
pub struct Table {
    source: Source,
    header: Vec<String>,
    rows: Vec<Row>,
}

/// One row.
pub struct Row {
    line: usize,
    cells: Vec<String>,
}

impl Table {
    /// Reads a table of comma-separated values.
    ///
    /// # Errors
    /// One [`Problem`]: empty, separated by semicolons or tabs, or a quote that does not close.
    pub fn read(source: Source) -> Result<Self, Problem> {
        let mut lines = source.text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty());
        let Some((at, first)) = lines.next() else {
            return Err(Problem::of_file(&source.name, "is empty; a table starts with its header"));
        };
        for (sign, word) in [(';', "semicolons"), ('\t', "tabs")] {
            if first.contains(sign) && !first.contains(',') {
                return Err(problem(
                    &source,
                    at + 1,
                    1,
                    format!("separates its columns by {word}; save it with commas and decimal points"),
                ));
            }
        }
        let header = cells(&source, at + 1, first)?;
        let rows = lines
            .map(|(at, line)| Ok(Row { line: at + 1, cells: cells(&source, at + 1, line)? }))
            .collect::<Result<Vec<_>, Problem>>()?;
        for row in &rows {
            if row.cells.len() != header.len() {
                let what = format!(
                    "has {} cells under {} columns; a decimal comma splits a number, so write decimal points",
                    row.cells.len(),
                    header.len()
                );
                return Err(problem(&source, row.line, 1, what));
            }
        }
        Ok(Self { source, header, rows })
    }

    /// The header.
    pub fn header(&self) -> &[String] {
        &self.header
    }

    /// The rows.
    pub fn rows(&self) -> &[Row] {
        &self.rows
    }

    /// The column of a name.
    pub fn column(&self, name: &str) -> Option<usize> {
        self.header.iter().position(|one| one == name)
    }

    /// A problem of a cell, or of a row where no column is given.
    pub fn problem(&self, row: &Row, column: Option<usize>, what: impl Into<String>) -> Problem {
        let text = self.source.line(row.line);
        // Cells before this one, with their commas; exact unless a cell before it is quoted.
        let before: usize =
            row.cells.iter().take(column.unwrap_or(0)).map(|cell| cell.chars().count() + 1).sum();
        let mut found =
            problem(&self.source, row.line, (before + 1).min(text.chars().count().max(1)), what.into());
        if let Some(name) = column.and_then(|column| self.header.get(column)) {
            found.field.clone_from(name);
        }
        found
    }

    /// A problem of the header.
    pub fn header_problem(&self, what: impl Into<String>) -> Problem {
        let line = self.source.text.lines().position(|line| !line.trim().is_empty()).unwrap_or_default() + 1;
        problem(&self.source, line, 1, what.into())
    }
}

impl Row {
    /// The text of a column, without blanks around it; none where it is empty.
    pub fn cell(&self, column: Option<usize>) -> Option<&str> {
        let text = self.cells.get(column?)?.trim();
        (!text.is_empty()).then_some(text)
    }
}

fn problem(source: &Source, line: usize, column: usize, what: String) -> Problem {
    let place = Place { line, column, text: source.line(line).to_owned() };
    Problem { file: source.name.clone(), place: Some(place), field: String::new(), what, count: 1 }
}

fn cells(source: &Source, line: usize, text: &str) -> Result<Vec<String>, Problem> {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).flexible(true).from_reader(text.as_bytes());
    let record = reader.records().next().transpose();
    match record {
        Ok(Some(record)) if text.matches('"').count().is_multiple_of(2) => {
            Ok(record.iter().map(|cell| cell.trim().to_owned()).collect())
        }
        _ => Err(problem(source, line, 1, "a quote is opened and not closed on this line".to_owned())),
    }
}
