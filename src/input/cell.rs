//! Owns the text of one cell: where it stands in its row, and its number in plain decimals. Reads no
//! units.

/// Where cell `wanted` of a raw row starts: lines below the row's first, and the column from 1.
pub(super) fn place_in(raw: &str, separator: char, wanted: usize) -> (usize, usize) {
    let (mut down, mut across, mut cell, mut quoted) = (0, 1, 0, false);
    for c in raw.chars() {
        if cell == wanted {
            break;
        }
        match c {
            '"' => quoted = !quoted,
            '\n' => {
                down += 1;
                across = 0;
            }
            c if c == separator && !quoted => cell += 1,
            _ => {}
        }
        across += 1;
    }
    (down, across)
}

/// A cell's numbers as plain decimals: `6 1/2` and `6½` become 6.5 and, with `decimal_comma`, `16,5`
/// becomes 16.5; none where nothing changes.
pub(super) fn normal(cell: &str, decimal_comma: bool) -> Option<String> {
    let fraction = cell.contains(['/', '½', '¼', '¾', '⅛', '⅜', '⅝', '⅞']);
    let comma = decimal_comma && cell.contains(',');
    if !fraction && !comma {
        return None;
    }
    let mut text = cell.to_owned();
    if comma {
        text = points(&text);
    }
    if fraction {
        text = decimals(&text);
    }
    (text != cell).then_some(text)
}

/// Numbers as they are typed, in plain decimals: `16,5` becomes 16.5, `6 1/2` and `6½` become 6.5.
pub fn plain_numbers(text: &str) -> String {
    let text = text.trim();
    normal(text, true).unwrap_or_else(|| text.to_owned())
}

/// Each comma between two digits as a point.
fn points(text: &str) -> String {
    let chars: Vec<char> = text.chars().collect();
    let digit = |at: usize| chars.get(at).is_some_and(char::is_ascii_digit);
    chars
        .iter()
        .enumerate()
        .map(|(at, c)| if *c == ',' && at > 0 && digit(at - 1) && digit(at + 1) { '.' } else { *c })
        .collect()
}

/// Halves, quarters, eighths and sixteenths as decimals, which they are exactly (derived).
fn decimals(text: &str) -> String {
    let mut spelt = text.to_owned();
    for (sign, words) in [
        ('½', " 1/2"),
        ('¼', " 1/4"),
        ('¾', " 3/4"),
        ('⅛', " 1/8"),
        ('⅜', " 3/8"),
        ('⅝', " 5/8"),
        ('⅞', " 7/8"),
    ] {
        spelt = spelt.replace(sign, words);
    }
    let mut out: Vec<String> = Vec::new();
    for part in spelt.split_inclusive([' ', '-', '–', '—']) {
        let word = part.trim_end_matches([' ', '-', '–', '—']);
        let tail = part.get(word.len()..).unwrap_or_default();
        let Some(ten_thousandths) = share(word) else {
            out.push(part.to_owned());
            continue;
        };
        let digits = format!("{ten_thousandths:04}");
        let digits = digits.trim_end_matches('0');
        // A whole number with a blank before it belongs to the fraction.
        match out.last_mut().filter(|last| {
            last.ends_with(' ') && last.trim().chars().all(|c| c.is_ascii_digit()) && !last.trim().is_empty()
        }) {
            Some(last) => *last = format!("{}.{digits}{tail}", last.trim()),
            None => out.push(format!("0.{digits}{tail}")),
        }
    }
    out.concat().trim().to_owned()
}

/// Ten-thousandths of `n/2`, `n/4`, `n/8` or `n/16` below one.
fn share(word: &str) -> Option<u32> {
    let (above, below) = word.split_once('/')?;
    let (above, below): (u32, u32) = (above.parse().ok()?, below.parse().ok()?);
    let holds = matches!(below, 2 | 4 | 8 | 16) && above < below && above > 0;
    holds.then(|| above * (10_000 / below))
}
