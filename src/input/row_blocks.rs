//! Owns the reading of a long table block by block: whole rows, in constant memory.

use std::io::{BufRead, BufReader, Cursor, Read};
use std::path::Path;

use super::cell::place_in;
use super::row_cells::RowCells;
use super::source::{no_plain_file, note_read};
use super::{Place, Problem, Source, sheet};

/// Bytes of one block before its last row is filled up (house rule: some two thousand rows).
const BLOCK: usize = 128 * 1024;

/// Most bytes of one row (house rule: a row of limbs is a hundred; a quote that never closes would read on
/// to the end).
const MOST_ROW: usize = 1024 * 1024;

/// A table whose rows are read block by block.
pub struct RowBlocks {
    name: String,
    from: Box<dyn BufRead + Send>,
    header: Vec<String>,
    header_line: String,
    sign: u8,
    rows: u64,
    number: u64,
    bytes: u64,
}

/// Whole rows of a table.
#[derive(Clone, Debug)]
pub struct RowBlock {
    /// Its number, from 0.
    pub number: u64,
    /// The number of its first row; the header is row 1, as in a spreadsheet.
    pub first_row: u64,
    /// Its rows with their line ends.
    pub text: Vec<u8>,
    /// Bytes of the table read so far, with this block.
    pub read: u64,
}

impl RowBlocks {
    /// Opens a table: a text file, `-` for standard input, or a spreadsheet.
    ///
    /// # Errors
    /// One [`Problem`]: not there, unreadable, or without a header.
    pub fn open(path: &Path) -> Result<Self, Problem> {
        let name = path.display().to_string();
        if name == "-" {
            return Self::of(name, Box::new(BufReader::with_capacity(BLOCK, std::io::stdin())));
        }
        if sheet::is_spreadsheet(path) {
            let source = Source::read_as(path, "a table of limbs")?;
            return Self::of(source.name, Box::new(Cursor::new(source.text.into_bytes())));
        }
        if let Some(problem) = no_plain_file(path, "a table of limbs") {
            return Err(problem);
        }
        match std::fs::File::open(path) {
            Ok(file) => {
                note_read(path);
                Self::of(name, Box::new(BufReader::with_capacity(BLOCK, file)))
            }
            Err(fault) if fault.kind() == std::io::ErrorKind::NotFound => {
                Err(Problem::of_file(&name, "there is no such file; check the path"))
            }
            Err(fault) => Err(Problem::of_file(&name, format!("cannot be read: {fault}"))),
        }
    }

    /// A table from a text.
    ///
    /// # Errors
    /// One [`Problem`]: without a header.
    pub fn from_text(name: &str, text: &str) -> Result<Self, Problem> {
        Self::of(name.to_owned(), Box::new(Cursor::new(text.as_bytes().to_vec())))
    }

    fn of(name: String, from: Box<dyn BufRead + Send>) -> Result<Self, Problem> {
        let mut blocks = Self {
            name,
            from,
            header: Vec::new(),
            header_line: String::new(),
            sign: b',',
            rows: 2,
            number: 0,
            bytes: 0,
        };
        let mut line = Vec::new();
        while line.is_empty() {
            if !blocks.read_row(&mut line)? {
                return Err(Problem::of_file(&blocks.name, "is empty; a table starts with its header"));
            }
            blocks.bytes += length(line.len());
            if line.starts_with(&[0xff, 0xfe]) || line.starts_with(&[0xfe, 0xff]) {
                return Err(Problem::of_file(&blocks.name, "is UTF-16 text; save it as UTF-8"));
            }
            if line.iter().all(u8::is_ascii_whitespace) {
                line.clear();
            }
        }
        let text = String::from_utf8(line)
            .map_err(|_| Problem::of_file(&blocks.name, "its header is not UTF-8; save the file as UTF-8"))?;
        let text = text.trim_start_matches('\u{feff}').trim_end_matches(['\r', '\n']);
        text.clone_into(&mut blocks.header_line);
        if !text.contains(',') {
            blocks.sign = if text.contains(';') {
                b';'
            } else if text.contains('\t') {
                b'\t'
            } else {
                b','
            };
        }
        let mut cells = RowCells::default();
        cells.split(text.as_bytes(), blocks.sign);
        blocks.header = cells.iter().map(|cell| String::from_utf8_lossy(cell).trim().to_owned()).collect();
        Ok(blocks)
    }

    /// The file's name.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The header.
    pub fn header(&self) -> &[String] {
        &self.header
    }

    /// The sign between two cells.
    pub fn sign(&self) -> u8 {
        self.sign
    }

    /// A problem of the header.
    pub fn header_problem(&self, what: impl Into<String>) -> Problem {
        Problem::at(&self.name, Some(Place::of(1, 1, &self.header_line)), what)
    }

    /// A problem of one column of the header.
    pub fn header_problem_at(&self, column: usize, what: impl Into<String>) -> Problem {
        let (_, across) = place_in(&self.header_line, char::from(self.sign), column);
        Problem::at(&self.name, Some(Place::of(1, across, &self.header_line)), what)
    }

    /// The next block; none at the end.
    ///
    /// # Errors
    /// One [`Problem`]: the file cannot be read on, or a row has no end.
    pub fn next_block(&mut self) -> Result<Option<RowBlock>, Problem> {
        let mut text = Vec::with_capacity(BLOCK + 4096);
        let limit = u64::try_from(BLOCK).unwrap_or(u64::MAX);
        let read = self.from.by_ref().take(limit).read_to_end(&mut text);
        read.map_err(|fault| Problem::of_file(&self.name, format!("cannot be read on: {fault}")))?;
        if text.is_empty() {
            return Ok(None);
        }
        // The last row is filled up; inside quotes a line end is none.
        let mut open = is_open(&text);
        while text.last() != Some(&b'\n') || open {
            let before = text.len();
            let mut rest = Vec::new();
            if !self.read_row(&mut rest)? {
                break;
            }
            open ^= is_open(&rest);
            text.extend_from_slice(&rest);
            if text.len() > BLOCK + MOST_ROW {
                let what = format!("row {} has no end; a quote is opened and not closed", self.rows);
                return Err(Problem::of_file(&self.name, what));
            }
            if text.len() == before {
                break;
            }
        }
        let rows = RowCells::count_rows(&text);
        self.bytes += length(text.len());
        let block = RowBlock { number: self.number, first_row: self.rows, text, read: self.bytes };
        self.number += 1;
        self.rows += rows;
        Ok(Some(block))
    }

    /// Reads up to the next line end; false at the end of the file.
    fn read_row(&mut self, into: &mut Vec<u8>) -> Result<bool, Problem> {
        let limit = u64::try_from(MOST_ROW).unwrap_or(u64::MAX);
        let read = self.from.by_ref().take(limit).read_until(b'\n', into);
        match read {
            Ok(count) => Ok(count > 0),
            Err(fault) => Err(Problem::of_file(&self.name, format!("cannot be read: {fault}"))),
        }
    }
}

/// Whether a quote is open at the end, where none was at the start.
fn is_open(text: &[u8]) -> bool {
    memchr::memchr_iter(b'"', text).count() % 2 == 1
}

fn length(bytes: usize) -> u64 {
    u64::try_from(bytes).unwrap_or(u64::MAX)
}
