//! Owns the look for merged cells in an `OpenDocument` sheet, which the spreadsheet reader does not tell: a
//! merged cell holds its value in its first cell alone, and those it covers read as empty.
//!
//! Source: `OpenDocument` 1.3, part 3, 9.1 (tables; memory): rows and cells with their repeats, spans as
//! attributes of the cell.

use std::io::{Cursor, Read as _};

use zip::ZipArchive;

/// The first merged cell of the sheet at `place` (from 0), as row and column from 0; none where there is
/// none, or where the content cannot be read (the reader then says so).
pub(super) fn merged(bytes: &[u8], place: usize, most: u64) -> Option<(usize, usize)> {
    let mut packed = ZipArchive::new(Cursor::new(bytes)).ok()?;
    let mut text = String::new();
    packed.by_name("content.xml").ok()?.take(most).read_to_string(&mut text).ok()?;
    let sheet = text.split("<table:table ").nth(place + 1)?;
    let sheet = sheet.split("</table:table>").next()?;
    let (mut row, mut column, mut times) = (0, 0, 1);
    for tag in sheet.split('<').skip(1) {
        let tag = tag.split('>').next().unwrap_or_default();
        let name = tag.split([' ', '/']).next().unwrap_or_default();
        match name {
            // A row begins at its first cell; its repeats count once it is over.
            "table:table-row" => {
                column = 0;
                times = repeats(tag, "rows");
                if tag.ends_with('/') {
                    row += times;
                }
            }
            "table:table-cell" | "table:covered-table-cell" => {
                let spans = number(tag, "table:number-columns-spanned=\"")
                    .max(number(tag, "table:number-rows-spanned=\""));
                if spans > 1 {
                    return Some((row, column));
                }
                column += repeats(tag, "columns");
            }
            _ if tag == "/table:table-row" => row += times,
            _ => {}
        }
    }
    None
}

fn repeats(tag: &str, of: &str) -> usize {
    number(tag, &format!("table:number-{of}-repeated=\"")).max(1)
}

/// The number of an attribute; 0 where it is not there.
fn number(tag: &str, attribute: &str) -> usize {
    let after = tag.split(attribute).nth(1).unwrap_or_default();
    after.split('"').next().and_then(|text| text.parse().ok()).unwrap_or_default()
}
