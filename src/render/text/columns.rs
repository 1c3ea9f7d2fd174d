//! Owns the breaking of text into lines of so many columns.

use unicode_width::{UnicodeWidthChar as _, UnicodeWidthStr as _};

use crate::document::{self, FIGURE_SPACE, HELD};

/// Columns that a text takes.
pub(super) fn columns(text: &str) -> usize {
    text.width()
}

/// Breaks a text into lines of at most `width` columns.
pub(super) fn wrap(text: &str, width: usize) -> Vec<String> {
    let width = f32::from(u16::try_from(width.max(1)).unwrap_or(u16::MAX));
    let measure = |c: char| f32::from(u8::try_from(c.width().unwrap_or_default()).unwrap_or_default());
    document::wrap(text, width, &measure).iter().map(|line| freed(line)).collect()
}

/// A line whose no-break spaces have done their work.
pub(super) fn freed(line: &str) -> String {
    line.replace([HELD, FIGURE_SPACE], " ").trim_end().to_owned()
}

/// A label, and a text beside it whose further lines stand under its first.
pub(super) fn hang(label: &str, indent: usize, text: &str, width: usize) -> Vec<String> {
    let label = freed(label);
    wrap(text, width.saturating_sub(indent))
        .iter()
        .enumerate()
        .map(|(place, line)| {
            let label = if place == 0 { label.as_str() } else { "" };
            format!("{label}{}{line}", " ".repeat(indent.saturating_sub(columns(label))))
        })
        .collect()
}
