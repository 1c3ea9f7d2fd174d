//! Owns the two forms that a batch writes: CSV and JSON lines.

use std::ops::Range;

use crate::input::escaped;

use super::number::{write_decimal, write_hundredths};

/// The form of the output.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BatchForm {
    /// Comma-separated values with a header.
    Csv,
    /// One JSON object a line.
    Jsonl,
}

/// Decimals of pressures and chances (house rule: at least nine significant digits of what is printed).
const PLACES: usize = 11;

/// Nothing, in JSON.
const NULL: &[u8] = b"null";

/// Writes the cells of one row.
pub(super) struct RowWriter<'o> {
    form: BatchForm,
    out: &'o mut Vec<u8>,
    keys: &'o [Vec<u8>],
    at: usize,
}

impl<'o> RowWriter<'o> {
    /// Begins a row; `keys` are the headings as JSON strings with their colon.
    pub(super) fn begin(form: BatchForm, out: &'o mut Vec<u8>, keys: &'o [Vec<u8>]) -> Self {
        if form == BatchForm::Jsonl {
            out.push(b'{');
        }
        Self { form, out, keys, at: 0 }
    }

    /// Ends the row.
    pub(super) fn end(self) {
        if self.form == BatchForm::Jsonl {
            self.out.push(b'}');
        }
        self.out.push(b'\n');
    }

    fn next(&mut self) {
        if self.at > 0 {
            self.out.push(b',');
        }
        if self.form == BatchForm::Jsonl
            && let Some(key) = self.keys.get(self.at)
        {
            self.out.extend_from_slice(key);
        }
        self.at += 1;
    }

    /// Nothing.
    pub(super) fn empty(&mut self) {
        self.next();
        if self.form == BatchForm::Jsonl {
            self.out.extend_from_slice(NULL);
        }
    }

    /// A number.
    pub(super) fn number(&mut self, value: Option<f64>) {
        let Some(value) = value else { return self.empty() };
        self.next();
        write_decimal(self.out, value, PLACES);
    }

    /// Hundredths.
    pub(super) fn hundredths(&mut self, value: Option<i64>) {
        let Some(value) = value else { return self.empty() };
        self.next();
        write_hundredths(self.out, value);
    }

    /// Yes or no.
    pub(super) fn truth(&mut self, value: Option<bool>) {
        let Some(value) = value else { return self.empty() };
        self.next();
        let (yes, no): (&[u8], &[u8]) =
            if self.form == BatchForm::Jsonl { (b"true", b"false") } else { (b"yes", b"no") };
        self.out.extend_from_slice(if value { yes } else { no });
    }

    /// A word of our own: no sign in it needs care.
    pub(super) fn word(&mut self, word: &str) {
        self.next();
        let quote = self.form == BatchForm::Jsonl;
        if quote {
            self.out.push(b'"');
        }
        self.out.extend_from_slice(word.as_bytes());
        if quote {
            self.out.push(b'"');
        }
    }

    /// A text of a file; none is left out.
    pub(super) fn text(&mut self, text: Option<&str>) {
        let Some(text) = text else { return self.empty() };
        self.next();
        cell_text(self.form, self.out, text);
    }

    /// Nothing, and where it stands: what is known later may take its place.
    pub(super) fn left_open(&mut self) -> Range<usize> {
        self.empty();
        let nothing = if self.form == BatchForm::Jsonl { NULL.len() } else { 0 };
        self.out.len() - nothing..self.out.len()
    }
}

/// A text as a cell of either form.
pub(super) fn cell_text(form: BatchForm, out: &mut Vec<u8>, text: &str) {
    // Rows are looked at in a terminal too.
    let text = &escaped(text);
    match form {
        BatchForm::Csv => csv_text(out, text),
        BatchForm::Jsonl => json_text(out, text),
    }
}

/// A text as a cell: quoted where it must be; one that a spreadsheet would run as a formula gets an
/// apostrophe in front.
pub(super) fn csv_text(out: &mut Vec<u8>, text: &str) {
    let runs = text.starts_with(['=', '+', '-', '@', '\t', '\r']);
    let quoted = runs || text.contains([',', '"', '\n', '\r', ';']);
    if quoted {
        out.push(b'"');
    }
    if runs {
        out.push(b'\'');
    }
    for byte in text.bytes() {
        if byte == b'"' {
            out.push(b'"');
        }
        out.push(byte);
    }
    if quoted {
        out.push(b'"');
    }
}

/// A text as a JSON string.
pub(super) fn json_text(out: &mut Vec<u8>, text: &str) {
    const HEX: &[u8; 16] = b"0123456789abcdef";
    out.push(b'"');
    for byte in text.bytes() {
        match byte {
            b'"' | b'\\' => out.extend_from_slice(&[b'\\', byte]),
            0..=0x1f => {
                let digit = |value: u8| HEX.get(usize::from(value)).copied().unwrap_or(b'0');
                out.extend_from_slice(&[b'\\', b'u', b'0', b'0', digit(byte >> 4), digit(byte & 15)]);
            }
            byte => out.push(byte),
        }
    }
    out.push(b'"');
}
