//! Owns the escaping of texts for HTML and for strings in style sheets.

use std::fmt::Write as _;

/// A text as HTML: nothing in it can become markup or leave an attribute.
pub(super) fn text(raw: &str) -> String {
    let mut out = String::with_capacity(raw.len());
    for letter in raw.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            // Control characters are no characters of HTML.
            other if other.is_control() => out.push('\u{FFFD}'),
            other => out.push(other),
        }
    }
    out
}

/// A text as a string of a style sheet inside `<style>`: letters, figures and blanks stay, everything
/// else is written as its number, so that no text can end the string, the rule or the element.
pub(super) fn css(raw: &str) -> String {
    let mut out = String::from("\"");
    for letter in raw.chars() {
        if letter.is_alphanumeric() || matches!(letter, ' ' | '-' | '.') {
            out.push(letter);
        } else {
            add(&mut out, format_args!("\\{:x} ", u32::from(letter)));
        }
    }
    out.push('"');
    out
}

/// Adds formatted markup; writing to a string cannot fail.
pub(super) fn add(out: &mut String, markup: std::fmt::Arguments<'_>) {
    let _ = out.write_fmt(markup);
}
