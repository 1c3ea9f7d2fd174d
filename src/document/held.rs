//! Owns the no-break spaces between a number and its unit.

use super::{Block, Scene, Shape, Sheet};

/// The no-break space.
pub const HELD: char = '\u{A0}';
/// A space as wide as a figure.
pub const FIGURE_SPACE: char = '\u{2007}';

/// What follows a number on the same line: units, and words that would stand lost alone.
const UNITS: [&str; 9] = ["cm", "mmHg", "%", "mL", "mm", "kg", "N/m", "months", "weeks"];

/// Puts a no-break space between a number and its unit.
pub fn held(text: &str) -> String {
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

/// Goes through every text of a sheet.
pub fn hold_units(sheet: &mut Sheet) {
    for leaf in &mut sheet.leaves {
        leaf.blocks.iter_mut().for_each(hold_block);
    }
}

fn hold_block(block: &mut Block) {
    let hold = |text: &mut String| *text = held(text);
    match block {
        Block::Heading(text) | Block::Text(_, text) => hold(text),
        Block::Keys(entries) | Block::Entries(entries) => {
            entries.iter_mut().flat_map(|entry| entry.said.iter_mut()).for_each(hold);
        }
        Block::List(items) => items.iter_mut().for_each(hold),
        Block::Ticks { items, .. } => items.iter_mut().for_each(|item| hold(&mut item.text)),
        Block::Blanks(rows) => {
            for blank in rows.iter_mut().flatten() {
                hold(&mut blank.label);
                hold(&mut blank.value);
            }
        }
        Block::Table(table) => {
            hold(&mut table.caption);
            table.rows.iter_mut().flat_map(|row| row.cells.iter_mut()).for_each(hold);
        }
        Block::Frame { title, inside, .. } => {
            hold(title);
            inside.iter_mut().for_each(hold_block);
        }
        Block::Columns(parts) => {
            parts.iter_mut().flat_map(|part| part.blocks.iter_mut()).for_each(hold_block);
        }
        Block::Together(inside) => inside.iter_mut().for_each(hold_block),
        Block::Figure(figure) => hold_scene(&mut figure.scene),
        Block::Square { .. } | Block::Verbatim(_) => {}
    }
}

fn hold_scene(scene: &mut Scene) {
    for shape in &mut scene.shapes {
        if let Shape::Label { text, .. } = shape {
            *text = held(text);
        }
    }
}
