//! Owns the text of one input file as read: encoding, byte-order mark, size. Does not parse.

use std::cell::RefCell;
use std::io::Read as _;
use std::path::{Path, PathBuf};

use super::{FileKind, Place, Problem, sheet};

/// Largest file taken, bytes (house rule: a record is about 3 KB, a large chart 100 KB, a table of
/// 20,000 sizes 2 MB).
const MOST_BYTES: u64 = 8 * 1024 * 1024;

/// One input file.
#[derive(Clone, Debug)]
pub struct Source {
    /// Its name as the user gave it; `-` is standard input.
    pub name: String,
    /// Its text, without a byte-order mark.
    pub text: String,
    /// Whether the tables that it names have decimal commas.
    comma_tables: bool,
}

impl Source {
    /// A text that is no file of its own, such as a shipped table.
    pub fn of_text(name: impl Into<String>, text: impl Into<String>) -> Self {
        Self { name: name.into(), text: text.into(), comma_tables: false }
    }

    /// Reads a file, or standard input for `-`.
    ///
    /// # Errors
    /// One [`Problem`]: not there, a directory, unreadable, too large, or not UTF-8.
    pub fn read(path: &Path) -> Result<Self, Problem> {
        Self::read_as(path, "a file")
    }

    /// Reads a file of which it is known what it should be, as `a fabric file`.
    ///
    /// # Errors
    /// As [`Source::read`]; the problem says what is expected.
    pub fn read_as(path: &Path, expected: &str) -> Result<Self, Problem> {
        let name = path.display().to_string();
        let bytes = read_bytes(path, expected)?;
        if sheet::is_spreadsheet(path) {
            return sheet::read(path, bytes);
        }
        Self::from_bytes(name, bytes)
    }

    /// Whether it was a spreadsheet; its name then ends with the sheet's.
    pub(super) fn is_sheet(&self) -> bool {
        self.name.contains(".xlsx, sheet ")
            || self.name.contains(".ods, sheet ")
            || self.name.contains(".XLSX, sheet ")
            || self.name.contains(".ODS, sheet ")
    }

    /// The same file; the tables that it names are read with decimal commas.
    #[must_use]
    pub fn naming_comma_tables(mut self) -> Self {
        self.comma_tables = true;
        self
    }

    /// A table that this file names, read as this file says.
    #[must_use]
    pub fn names_table(&self, table: Self) -> Self {
        if self.comma_tables { table.with_decimal_commas() } else { table }
    }

    /// The same table with each decimal comma as a point: in a text whose columns are separated by other
    /// signs everywhere, else inside quotes. Every place in it stays the same.
    #[must_use]
    pub fn with_decimal_commas(mut self) -> Self {
        let first = self.text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
        let everywhere = first.contains([';', '\t']);
        let mut quoted = false;
        let mut mended = String::with_capacity(self.text.len());
        let mut before = ' ';
        let mut chars = self.text.chars().peekable();
        while let Some(c) = chars.next() {
            quoted ^= c == '"';
            let number = before.is_ascii_digit() && chars.peek().is_some_and(char::is_ascii_digit);
            mended.push(if c == ',' && number && (everywhere || quoted) { '.' } else { c });
            before = c;
        }
        self.text = mended;
        self
    }

    /// Whether it is a table: a spreadsheet, a `.csv` or `.tsv` file, or a text whose first line has the
    /// separators of a header and names no kind.
    pub fn is_table(&self) -> bool {
        let ending = Path::new(&self.name).extension().and_then(|ext| ext.to_str()).unwrap_or_default();
        if self.is_sheet() || ending.eq_ignore_ascii_case("csv") || ending.eq_ignore_ascii_case("tsv") {
            return true;
        }
        let first = self.text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
        self.kind().is_none()
            && !ending.eq_ignore_ascii_case("yaml")
            && !ending.eq_ignore_ascii_case("yml")
            && !first.contains(": ")
            && !first.trim_start().starts_with(['-', '{', '[', '#', '%'])
            && first.contains([',', ';', '\t'])
    }

    /// A table that was turned into JSON when the program was built.
    pub(super) fn is_built(&self) -> bool {
        self.text.starts_with('{') && self.name.starts_with("shipped ")
    }

    /// The kind of a YAML file, from its key `tapeline` (`tapeline: record/1`), without reading the rest. It is the
    /// first key; a file saved by a library that sorts its keys has it further down.
    pub fn kind(&self) -> Option<FileKind> {
        let mut lines = self.text.lines().map(str::trim_end);
        let first = lines.find(|line| {
            let line = line.trim_start();
            !(line.is_empty() || line.starts_with('#') || line.starts_with('%') || line == "---")
        })?;
        let first = first.trim_start_matches("--- ").trim_start_matches(['{', ' ', '"', '\'']);
        std::iter::once(first).chain(lines.filter(|line| line.starts_with("tapeline"))).find_map(kind_of_line)
    }

    /// A source from bytes already read.
    ///
    /// # Errors
    /// One [`Problem`] with the place of the first byte that is not UTF-8.
    pub fn from_bytes(name: String, bytes: Vec<u8>) -> Result<Self, Problem> {
        if bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]) {
            return Err(Problem::of_file(&name, "is UTF-16 text; save it as UTF-8"));
        }
        match String::from_utf8(bytes) {
            Ok(text) => {
                let text = text.strip_prefix('\u{feff}').map(str::to_owned).unwrap_or(text);
                Ok(Self { name, text, comma_tables: false })
            }
            Err(fault) => {
                let upto = fault.utf8_error().valid_up_to();
                let bytes = fault.into_bytes();
                let before = String::from_utf8_lossy(bytes.get(..upto).unwrap_or_default()).into_owned();
                let line = before.matches('\n').count() + 1;
                let last = before.rsplit('\n').next().unwrap_or_default().trim_start_matches('\u{feff}');
                let whole =
                    String::from_utf8_lossy(bytes.get(upto - last.len()..).unwrap_or_default()).into_owned();
                let text = whole.lines().next().unwrap_or_default().to_owned();
                let place = Place::of(line, last.chars().count() + 1, &text);
                let what = "a character that is not UTF-8; save the file as UTF-8";
                Err(Problem::at(&name, Some(place), what))
            }
        }
    }

    /// The text of line `line` (from 1), without its end.
    pub fn line(&self, line: usize) -> &str {
        self.text.lines().nth(line.saturating_sub(1)).unwrap_or_default()
    }

    /// The path of a file named in this one, relative to this one's folder.
    pub fn beside(&self, name: &str) -> PathBuf {
        Path::new(&self.name).parent().map_or_else(|| PathBuf::from(name), |folder| folder.join(name))
    }
}

thread_local! {
    /// The files that were read, so that no output of the same run is written over one.
    static READ: RefCell<Vec<PathBuf>> = const { RefCell::new(Vec::new()) };
}

/// Every file that was read so far, with those that files name.
pub fn files_read() -> Vec<PathBuf> {
    READ.with_borrow(Clone::clone)
}

/// Notes that a file was read.
pub(super) fn note_read(path: &Path) {
    READ.with_borrow_mut(|read| read.push(path.to_owned()));
}

/// What is wrong with a path that should name a plain file (`-` is standard input); `expected` is what it should be, as
/// `a record`. A pipe or device would keep the program waiting, or never end.
pub fn no_plain_file(path: &Path, expected: &str) -> Option<Problem> {
    let name = path.display().to_string();
    let what = match std::fs::metadata(path) {
        _ if name == "-" => return None,
        Ok(about) if about.is_file() => return None,
        Ok(about) if about.is_dir() => format!("is a folder, but {expected} is wanted; name a file in it"),
        Ok(_) => format!("is a pipe or device, but {expected} is wanted; save it as a file, or use `-`"),
        Err(fault) if fault.kind() == std::io::ErrorKind::NotFound => {
            "there is no such file; check the path".to_owned()
        }
        Err(fault) => format!("cannot be read: {fault}"),
    };
    Some(Problem::of_file(&name, what))
}

/// The bytes of a file, or of standard input for `-`; `expected` is what it should be, as `a record`.
///
/// # Errors
/// One [`Problem`]: not there, no plain file, unreadable, or larger than 8 MiB.
pub(super) fn read_bytes(path: &Path, expected: &str) -> Result<Vec<u8>, Problem> {
    let name = path.display().to_string();
    let refuse = |what: String| Problem::of_file(&name, what);
    let mut bytes = Vec::new();
    let read = if name == "-" {
        std::io::stdin().lock().take(MOST_BYTES + 1).read_to_end(&mut bytes)
    } else {
        if let Some(problem) = no_plain_file(path, expected) {
            return Err(problem);
        }
        std::fs::File::open(path).and_then(|file| file.take(MOST_BYTES + 1).read_to_end(&mut bytes))
    };
    match read {
        Err(fault) if fault.kind() == std::io::ErrorKind::NotFound => {
            Err(refuse("there is no such file; check the path".to_owned()))
        }
        Err(fault) => Err(refuse(format!("cannot be read: {fault}"))),
        Ok(_) if u64::try_from(bytes.len()).is_ok_and(|length| length > MOST_BYTES) => {
            Err(refuse(format!("is larger than 8 MiB, the most that is taken; {expected} is wanted")))
        }
        Ok(_) => {
            if name != "-" {
                note_read(path);
            }
            Ok(bytes)
        }
    }
}

/// The kind that a line `tapeline: record/1` names.
fn kind_of_line(line: &str) -> Option<FileKind> {
    let value = line.strip_prefix("tapeline")?.trim_start_matches(['"', '\'', ' ']).strip_prefix(':')?;
    let value = value.split(['#', ',', '}']).next().unwrap_or_default();
    FileKind::parse(value.trim().trim_matches(['"', '\'']))
}
