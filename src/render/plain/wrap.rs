//! Owns the breaking of text into lines of so many columns.

use unicode_width::UnicodeWidthStr as _;

/// Columns that a text takes.
pub(super) fn columns(text: &str) -> usize {
    text.width()
}

/// Breaks a text at its spaces into lines of at most `width` columns; no-break spaces hold. A word
/// that is too long is cut. At least one line comes back.
pub(super) fn wrap(text: &str, width: usize) -> Vec<String> {
    let width = width.max(1);
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in text.split([' ', '\n']).filter(|word| !word.is_empty()) {
        if !line.is_empty() && columns(&line) + 1 + columns(word) > width {
            lines.push(std::mem::take(&mut line));
        }
        if !line.is_empty() {
            line.push(' ');
        }
        for letter in word.chars() {
            let mut buffer = [0; 4];
            if columns(&line) + columns(letter.encode_utf8(&mut buffer)) > width {
                lines.push(std::mem::take(&mut line));
            }
            line.push(letter);
        }
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines.iter().map(|line| line.replace('\u{a0}', " ")).collect()
}
