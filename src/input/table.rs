//! Owns the use of `csv`: a table with a header, read row by row, each cell with its line and column.
//! Knows no columns.
//!
//! Columns may be separated by commas, semicolons or tabs; which it was is told. Lines are counted
//! here, not by the reader, so that files with any line ends report alike.

use super::cell::{normal, place_in};
use super::{MOST_PROBLEMS, Place, Problem, Source};

/// A table with a header.
pub struct Table {
    source: Source,
    header: Vec<String>,
    header_line: usize,
    rows: Vec<Row>,
    separator: char,
    decimal_comma: bool,
}

/// One row.
pub struct Row {
    line: usize,
    start: usize,
    end: usize,
    cells: Vec<String>,
}

impl Table {
    /// Reads a table; numbers have decimal points.
    ///
    /// # Errors
    /// One [`Problem`]: empty, ragged, a second header, or a quote that does not close.
    pub fn read(source: Source) -> Result<Self, Problem> {
        Self::read_with(source, false)
    }

    /// Reads a table whose numbers have decimal commas where `decimal_comma` is set.
    ///
    /// # Errors
    /// As [`Table::read`].
    pub fn read_with(source: Source, decimal_comma: bool) -> Result<Self, Problem> {
        let text = source.text.as_str();
        let Some(first) = text.lines().find(|line| !line.trim().is_empty()) else {
            return Err(Problem::of_file(&source.name, "is empty; a table starts with its header"));
        };
        let separator = separator_of(first);
        let mut reader = csv::ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .delimiter(u8::try_from(separator).unwrap_or(b','))
            .from_reader(text.as_bytes());
        let mut record = csv::StringRecord::new();
        let (mut line, mut upto) = (1_usize, 0_usize);
        let mut all = Vec::new();
        loop {
            let before = position(&reader);
            let more = reader.read_record(&mut record);
            let after = position(&reader);
            let whole = text.get(before..after).unwrap_or_default();
            let start = before + (whole.len() - whole.trim_start_matches(['\r', '\n']).len());
            line += newlines(text, upto, start);
            upto = start;
            let raw = text.get(start..after).unwrap_or_default();
            match more {
                Ok(false) => break,
                Ok(true) if raw.matches('"').count().is_multiple_of(2) => {}
                _ => {
                    let what = "a quote is opened and not closed";
                    return Err(problem(&source, line, 1, what.to_owned()));
                }
            }
            let cells: Vec<String> = record.iter().map(|cell| cell.trim().to_owned()).collect();
            if cells.iter().any(|cell| !cell.is_empty()) {
                all.push(Row { line, start, end: after, cells });
            }
        }
        let mut rows = all.into_iter();
        let Some(head) = rows.next() else {
            return Err(Problem::of_file(&source.name, "is empty; a table starts with its header"));
        };
        let mut rows: Vec<Row> = rows.collect();
        for row in &mut rows {
            for cell in &mut row.cells {
                if let Some(mended) = normal(cell, decimal_comma) {
                    *cell = mended;
                }
            }
        }
        let table =
            Self { source, header: head.cells, header_line: head.line, rows, separator, decimal_comma };
        table.check()?;
        Ok(table)
    }

    /// Faults of the whole table: a second header, ragged rows.
    fn check(&self) -> Result<(), Problem> {
        let said = |cells: &[String]| cells.iter().filter(|cell| !cell.is_empty()).count();
        if said(&self.header) == 1 && self.rows.first().is_some_and(|row| said(&row.cells) > 1) {
            let what = "is a title above the table; take it out, so that the header stands in the first row";
            return Err(self.header_problem(what));
        }
        if let Some(row) = self.rows.first()
            && self.rows.len() > 1
            && !row.cells.iter().any(|cell| cell.contains(|c: char| c.is_ascii_digit()))
        {
            let what = "looks like a second header row; keep one header, as `wrist_cm` or `wrist (cm)`";
            return Err(self.problem(row, None, what));
        }
        let columns = self.header.len();
        for row in &self.rows {
            if row.cells.len() != columns {
                let hint = if self.separator == ',' {
                    "; a decimal comma splits a number, so write decimal points, or separate the columns by semicolons"
                } else {
                    ""
                };
                let what = format!("has {} cells under {columns} columns{hint}", row.cells.len());
                return Err(self.problem(row, None, what));
            }
        }
        Ok(())
    }

    /// The file.
    pub fn source(&self) -> &Source {
        &self.source
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

    /// What was understood of the file's form beyond commas and points, to be told: `columns separated
    /// by semicolons`, `decimal commas`.
    pub fn understood(&self) -> Vec<&'static str> {
        let mut told = Vec::new();
        match self.separator {
            ';' => told.push("columns separated by semicolons"),
            '\t' => told.push("columns separated by tabs"),
            _ => {}
        }
        if self.decimal_comma {
            told.push("decimal commas read as points");
        }
        told
    }

    /// A problem of a cell, or of a row where no column is given.
    pub fn problem(&self, row: &Row, column: Option<usize>, what: impl Into<String>) -> Problem {
        let name = column.and_then(|column| self.header.get(column)).cloned().unwrap_or_default();
        let mut what = what.into();
        if what.contains("has a decimal comma") {
            what.push_str("; or read the table with `--decimal-comma`");
        }
        if self.source.is_sheet() {
            let cell =
                column.map_or_else(|| format!("row {}", row.line), |column| cell_name(column, row.line));
            let field = if name.is_empty() { cell } else { format!("{cell}, {name}") };
            return Problem { field, ..Problem::of_file(&self.source.name, what) };
        }
        let raw = self.source.text.get(row.start..row.end).unwrap_or_default();
        let (down, across) = place_in(raw, self.separator, column.unwrap_or(0));
        let mut found = problem(&self.source, row.line + down, across, what);
        found.field = name;
        found
    }

    /// A problem of the header.
    pub fn header_problem(&self, what: impl Into<String>) -> Problem {
        if self.source.is_sheet() {
            let field = format!("row {}", self.header_line);
            return Problem { field, ..Problem::of_file(&self.source.name, what) };
        }
        problem(&self.source, self.header_line, 1, what.into())
    }

    /// A problem of one column of the header.
    pub fn header_problem_at(&self, column: usize, what: impl Into<String>) -> Problem {
        if self.source.is_sheet() {
            let field = cell_name(column, self.header_line);
            return Problem { field, ..Problem::of_file(&self.source.name, what) };
        }
        let line = self.source.text.lines().nth(self.header_line.saturating_sub(1)).unwrap_or_default();
        let (down, across) = place_in(line, self.separator, column);
        problem(&self.source, self.header_line + down, across, what.into())
    }

    /// At most [`MOST_PROBLEMS`] problems of this table, and a count of the rest.
    pub fn capped(&self, mut problems: Vec<Problem>) -> Vec<Problem> {
        let rest: usize = problems.iter().skip(MOST_PROBLEMS).map(|one| one.count).sum();
        if rest > 0 {
            problems.truncate(MOST_PROBLEMS);
            let what = format!("{rest} more problems of this file are not shown");
            problems.push(Problem { count: rest, ..Problem::of_file(&self.source.name, what) });
        }
        problems
    }
}

impl Row {
    /// The text of a column, without blanks around it; none where it is empty.
    pub fn cell(&self, column: Option<usize>) -> Option<&str> {
        let text = self.cells.get(column?)?.trim();
        (!text.is_empty()).then_some(text)
    }

    /// The line it stands on.
    pub fn line(&self) -> usize {
        self.line
    }
}

/// `C5` of column 2, row 5.
pub(super) fn cell_name(column: usize, row: usize) -> String {
    let mut letters = Vec::new();
    let mut rest = column + 1;
    while rest > 0 {
        let letter = u8::try_from((rest - 1) % 26).unwrap_or_default();
        letters.push(char::from(b'A' + letter));
        rest = (rest - 1) / 26;
    }
    format!("{}{row}", letters.into_iter().rev().collect::<String>())
}

/// The sign that separates the columns of a header.
fn separator_of(header: &str) -> char {
    if header.contains(';') && !header.contains(',') {
        ';'
    } else if header.contains('\t') && !header.contains(',') {
        '\t'
    } else if header.matches(';').count() > header.matches(',').count() {
        ';'
    } else {
        ','
    }
}

fn position(reader: &csv::Reader<&[u8]>) -> usize {
    usize::try_from(reader.position().byte()).unwrap_or(usize::MAX)
}

fn newlines(text: &str, from: usize, to: usize) -> usize {
    text.get(from..to).unwrap_or_default().matches('\n').count()
}

fn problem(source: &Source, line: usize, column: usize, what: String) -> Problem {
    let place = Place::of(line, column, source.line(line));
    Problem { file: source.name.clone(), place: Some(place), field: String::new(), what, count: 1 }
}
