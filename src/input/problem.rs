//! Owns a problem of an input file: what is wrong, where, and what would be accepted.

use std::fmt;

use super::text::{escaped, is_refused};

/// Problems printed of one file; the rest are counted (house rule).
pub const MOST_PROBLEMS: usize = 50;

/// A line and column, both from 1, with the text of the line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// The line itself, or the part of a long line around the column.
    pub text: Box<str>,
    /// Characters of the line before that part.
    pub skipped: usize,
}

impl Place {
    /// A place on a line whose whole text is `line_text`; of a long line only the part around it is kept.
    pub fn of(line: usize, column: usize, line_text: &str) -> Self {
        let skipped = if column > SHOWN { column - SHOWN / 2 } else { 0 };
        let text = line_text.chars().skip(skipped).take(SHOWN + 1).collect::<String>().into();
        Self { line, column, text, skipped }
    }
}

/// One thing wrong with an input file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// The file's name as the user gave it.
    pub file: String,
    /// Where in it; none when the file as a whole is meant.
    pub place: Option<Place>,
    /// Which field, in words: `marks, item 2, girth`; empty when the file as a whole is meant.
    pub field: String,
    /// What is wrong and what would be accepted, in one clause.
    pub what: String,
    /// How many problems it tells of: one, or all those that are not shown.
    pub count: usize,
}

impl Problem {
    /// A problem of a whole file.
    pub fn of_file(file: &str, what: impl Into<String>) -> Self {
        Self { file: file.to_owned(), place: None, field: String::new(), what: what.into(), count: 1 }
    }

    /// A problem at a place.
    pub fn at(file: &str, place: Option<Place>, what: impl Into<String>) -> Self {
        Self { place, ..Self::of_file(file, what) }
    }
}

/// Longest part of a line that is shown under a problem, characters.
const SHOWN: usize = 110;

/// Longest text of a user that is repeated whole, characters.
const REPEATED: usize = 80;

/// Longest name of a field that is printed, characters; our own are far shorter.
const FIELD: usize = 200;

/// A message with control characters escaped and long texts in backticks cut short.
fn printable(what: &str) -> String {
    let clean = escaped;
    let mut parts = Vec::new();
    for (number, part) in what.split('`').enumerate() {
        let quoted = number % 2 == 1;
        parts.push(match part.char_indices().nth(REPEATED) {
            Some((end, _)) if quoted => format!("{}…", clean(part.get(..end).unwrap_or_default())),
            _ => clean(part).into_owned(),
        });
    }
    parts.join("`")
}

impl fmt::Display for Problem {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&escaped(&self.file))?;
        if let Some(place) = &self.place {
            write!(out, ":{}:{}", place.line, place.column)?;
        }
        out.write_str(": ")?;
        if !self.field.is_empty() {
            let field: String = printable(&self.field).chars().take(FIELD).collect();
            write!(out, "{field}: ")?;
        }
        out.write_str(&printable(&self.what))?;
        let Some(place) = &self.place else { return Ok(()) };
        let start = place.skipped;
        let shown: String =
            place.text.chars().take(SHOWN).map(|c| if is_refused(c) { ' ' } else { c }).collect();
        let number = place.line.to_string();
        let blank = " ".repeat(number.len());
        let dots = if start > 0 { "…" } else { "" };
        let indent = " ".repeat(place.column.saturating_sub(start + 1) + dots.chars().count());
        write!(out, "\n  {number} | {dots}{shown}\n  {blank} | {indent}^")
    }
}
