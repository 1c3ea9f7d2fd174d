//! Owns small matters of words: no-break spaces, capitals, lists.

use super::{Block, Scene, Shape, Sheet};

/// The no-break space.
const HELD: char = '\u{A0}';

/// What follows a number on the same line: units, and words that would stand lost alone.
const UNITS: [&str; 8] = ["cm", "mmHg", "%", "mL", "mm", "kg", "N/m", "months"];

/// Puts a no-break space between a number and its unit.
pub(super) fn held(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find(' ') {
        let (before, after) = rest.split_at(at);
        let after = after.strip_prefix(' ').unwrap_or(after);
        out.push_str(before);
        let number = before.ends_with(|c: char| c.is_ascii_digit());
        let unit = number
            && UNITS.iter().any(|unit| {
                after.strip_prefix(unit).is_some_and(|left| !left.starts_with(char::is_alphanumeric))
            });
        out.push(if unit { HELD } else { ' ' });
        rest = after;
    }
    out.push_str(rest);
    out
}

/// The text with its first letter in capitals.
pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// The text with a full stop, unless it ends in one.
pub(super) fn sentence(text: &str) -> String {
    let text = capital(text.trim());
    if text.is_empty() || text.ends_with(['.', '!', '?', ':']) { text } else { text + "." }
}

/// Goes through every text of a sheet.
pub(super) fn hold_units(sheet: &mut Sheet) {
    for leaf in &mut sheet.leaves {
        for block in &mut leaf.blocks {
            hold_block(block);
        }
    }
}

fn hold_block(block: &mut Block) {
    let hold = |text: &mut String| *text = held(text);
    match block {
        Block::Heading(text) | Block::Text(_, text) => hold(text),
        Block::Keys(pairs) => pairs.iter_mut().for_each(|(_, value)| hold(value)),
        Block::List(items) | Block::Ticks { items, .. } => items.iter_mut().for_each(hold),
        Block::Blanks(rows) => rows.iter_mut().flatten().for_each(hold),
        Block::Table(table) => {
            hold(&mut table.caption);
            table.rows.iter_mut().flatten().for_each(hold);
        }
        Block::Frame { title, inside, .. } => {
            hold(title);
            inside.iter_mut().for_each(hold_block);
        }
        Block::Figure(Scene { shapes, .. }) => {
            for shape in shapes {
                if let Shape::Label { text, .. } = shape {
                    hold(text);
                }
            }
        }
    }
}
