//! Owns the use of `calamine`: the one sheet of a spreadsheet becomes the text of a table, so that
//! everything behind it reads tables alike. Knows no columns.
//!
//! What a person sees in a sheet and what its cells hold can differ (merged cells, formulas, dates that
//! were girths); each of these is a problem with sheet and cell.

use std::fmt::Write as _;
use std::io::Cursor;
use std::path::Path;

use calamine::{Data, Ods, Reader as _, Xlsx};

use super::ods_merged::merged;
use super::table::cell_name;
use super::{Problem, Source};

/// Most cells of a sheet (house rule: 20,000 sizes of ten measures are 500,000 at most).
const MOST_CELLS: usize = 2_000_000;

/// Most bytes that a spreadsheet may unpack to (house rule: eight times the largest text that is taken).
const MOST_UNPACKED: u64 = 64 * 1024 * 1024;

/// The bytes that a packed file says it unpacks to; none where it is no such file, or says it in the way of
/// files above 4 GiB.
///
/// Source: the central directory of the ZIP format (APPNOTE 6.3, 4.3.12 and 4.3.16; memory).
fn unpacked(bytes: &[u8]) -> Option<u64> {
    let four = |at: usize| -> Option<u64> {
        let found: [u8; 4] = bytes.get(at..at.checked_add(4)?)?.try_into().ok()?;
        Some(u64::from(u32::from_le_bytes(found)))
    };
    let two = |at: usize| -> Option<usize> {
        let found: [u8; 2] = bytes.get(at..at.checked_add(2)?)?.try_into().ok()?;
        Some(usize::from(u16::from_le_bytes(found)))
    };
    let end = bytes.windows(4).rposition(|four| four == b"PK\x05\x06")?;
    let count = two(end + 10)?;
    let mut at = usize::try_from(four(end + 16)?).ok()?;
    let mut sum = 0_u64;
    for _ in 0..count {
        if bytes.get(at..at.checked_add(4)?)? != b"PK\x01\x02" {
            return None;
        }
        let size = four(at + 24)?;
        if size == u64::from(u32::MAX) {
            return None;
        }
        sum += size;
        at = at.checked_add(46 + two(at + 28)? + two(at + 30)? + two(at + 32)?)?;
    }
    Some(sum)
}

/// Whether a path is that of a spreadsheet, by its ending.
pub(super) fn is_spreadsheet(path: &Path) -> bool {
    path.extension().is_some_and(|ext| ext.eq_ignore_ascii_case("xlsx") || ext.eq_ignore_ascii_case("ods"))
}

/// Makes a table's text of a spreadsheet with one filled sheet.
///
/// # Errors
/// One [`Problem`] with sheet and cell.
pub(super) fn read(path: &Path, bytes: Vec<u8>) -> Result<Source, Problem> {
    let name = path.display().to_string();
    let broken =
        |fault: String| Problem::of_file(&name, format!("is no spreadsheet that can be read: {fault}"));
    match unpacked(&bytes) {
        None => return Err(broken("it is no packed file of that kind".to_owned())),
        Some(size) if size > MOST_UNPACKED => {
            return Err(Problem::of_file(&name, "unpacks to more than 64 MiB, the most that is taken"));
        }
        Some(_) => {}
    }
    if path.extension().is_some_and(|ext| ext.eq_ignore_ascii_case("ods")) {
        let mut book = Ods::new(Cursor::new(bytes.clone())).map_err(|fault| broken(fault.to_string()))?;
        let (sheet, cells) = filled(&name, &mut book)?;
        let place = book.sheet_names().iter().position(|one| *one == sheet).unwrap_or_default();
        text_of(&name, &sheet, &cells, merged(&bytes, place, MOST_UNPACKED))
    } else {
        let mut book = Xlsx::new(Cursor::new(bytes)).map_err(|fault| broken(fault.to_string()))?;
        let (sheet, cells) = filled(&name, &mut book)?;
        let merged = book.merge_cells_by_sheet_name(&sheet).unwrap_or_default();
        let merged = merged.first().map(|one| (index(one.start.0), index(one.start.1)));
        text_of(&name, &sheet, &cells, merged)
    }
}

/// The values and formulas of the one filled sheet.
struct Cells {
    values: calamine::Range<Data>,
    formulas: calamine::Range<String>,
}

fn filled<B>(name: &str, book: &mut B) -> Result<(String, Cells), Problem>
where
    B: calamine::Reader<Cursor<Vec<u8>>>,
    B::Error: std::fmt::Display,
{
    let mut found: Vec<(String, calamine::Range<Data>)> = Vec::new();
    for sheet in book.sheet_names() {
        let values = book.worksheet_range(&sheet).map_err(|fault| {
            Problem::of_file(name, format!("the sheet `{sheet}` cannot be read: {fault}"))
        })?;
        if values.used_cells().next().is_some() {
            found.push((sheet, values));
        }
    }
    if found.len() > 1 {
        let names: Vec<String> = found.iter().map(|(sheet, _)| format!("`{sheet}`")).collect();
        let what =
            format!("has {} filled sheets, {}; keep one table in a file", found.len(), names.join(", "));
        return Err(Problem::of_file(name, what));
    }
    let Some((sheet, values)) = found.pop() else {
        return Err(Problem::of_file(name, "is empty; a table starts with its header"));
    };
    if values.height().saturating_mul(values.width()) > MOST_CELLS {
        let what = format!("spans more than {MOST_CELLS} cells, the most that is taken");
        return Err(Problem::of_file(name, what));
    }
    let formulas = book.worksheet_formula(&sheet).unwrap_or_default();
    Ok((sheet, Cells { values, formulas }))
}

fn text_of(
    name: &str,
    sheet: &str,
    cells: &Cells,
    merged: Option<(usize, usize)>,
) -> Result<Source, Problem> {
    let title = format!("{name}, sheet {sheet}");
    let refuse = |row: usize, column: usize, what: &str| {
        let field = cell_name(column, row + 1);
        Err(Problem { field, ..Problem::of_file(&title, what) })
    };
    if let Some((row, column)) = merged {
        return refuse(
            row,
            column,
            "is merged with its neighbours; split the cells, so that each holds its value",
        );
    }
    let (top, left) = cells.values.start().map_or((0, 0), |(row, column)| (index(row), index(column)));
    if let Some((row, column, _)) = cells.formulas.used_cells().find(|(_, _, formula)| !formula.is_empty()) {
        let (top, left) = cells.formulas.start().map_or((0, 0), |(row, column)| (index(row), index(column)));
        return refuse(top + row, left + column, "holds a formula; paste its value in its place");
    }
    // Lines of the text are rows of the sheet.
    let mut text = "\n".repeat(top);
    let head: Vec<String> = cells
        .values
        .rows()
        .next()
        .map(|row| row.iter().map(|cell| cell.to_string().trim().to_lowercase()).collect())
        .unwrap_or_default();
    let is_of_days =
        |column: usize| head.get(column).is_some_and(|name| name == "date" || name.ends_with("_on"));
    for (down, row) in cells.values.rows().enumerate() {
        for (across, cell) in row.iter().enumerate() {
            let shown = match cell {
                Data::Empty => String::new(),
                Data::Int(number) => number.to_string(),
                Data::Float(number) => plain(*number),
                Data::String(text) => text.replace(['\n', '\r'], " "),
                Data::Bool(truth) => (if *truth { "yes" } else { "no" }).to_owned(),
                Data::DateTime(when) if when.is_datetime() && down > 0 && is_of_days(across) => {
                    let (year, month, day, hour, minute, _, _) = when.to_ymd_hms_milli();
                    day_of(year, month, day, (hour, minute))
                }
                Data::DateTimeIso(when) if down > 0 && is_of_days(across) => when.clone(),
                Data::DateTime(_) | Data::DateTimeIso(_) | Data::DurationIso(_) => {
                    let what = "holds a date, not a number or range; format the cell as text and type it again, as `10-12`";
                    return refuse(top + down, left + across, what);
                }
                Data::Error(_) => return refuse(top + down, left + across, "holds an error; type its value"),
            };
            if across > 0 {
                text.push(',');
            }
            let _ = write!(text, "\"{}\"", shown.trim().replace('"', "\"\""));
        }
        text.push('\n');
    }
    Source::from_bytes(title, text.into_bytes())
}

fn index(number: u32) -> usize {
    usize::try_from(number).unwrap_or(usize::MAX)
}

/// A day, or a day with its time where the cell has one.
fn day_of(year: u16, month: u8, day: u8, (hour, minute): (u8, u8)) -> String {
    let date = format!("{year:04}-{month:02}-{day:02}");
    if (hour, minute) == (0, 0) { date } else { format!("{date}T{hour:02}:{minute:02}") }
}

/// A number as typed: the shortest decimal that is the same number, without an exponent.
fn plain(number: f64) -> String {
    number.to_string()
}
