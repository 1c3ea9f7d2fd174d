//! Owns the one type of every label that a file states and a report prints.

use std::borrow::Cow;
use std::fmt;

/// A label: one line, no control characters, no bidirectional overrides, at most 120 columns.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Text(String);

/// Why a text is no label.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TextFault {
    /// Nothing in it.
    Empty,
    /// A control character, a line break or a bidirectional override.
    Character(char),
    /// More than [`Text::MOST_COLUMNS`] columns.
    Long,
}

impl Text {
    /// Most columns of a label (house rule: it stands on one line of a sheet).
    pub const MOST_COLUMNS: usize = 120;

    /// A label of `text`, without blanks around it.
    ///
    /// # Errors
    /// A [`TextFault`] that says why it is none.
    pub fn new(text: &str) -> Result<Self, TextFault> {
        let text = text.trim();
        if text.is_empty() {
            return Err(TextFault::Empty);
        }
        if let Some(c) = text.chars().find(|c| is_refused(*c)) {
            return Err(TextFault::Character(c));
        }
        if unicode_width::UnicodeWidthStr::width(text) > Self::MOST_COLUMNS {
            return Err(TextFault::Long);
        }
        Ok(Self(text.to_owned()))
    }

    /// The text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// Control characters, line and paragraph separators, and what turns the direction of writing.
pub(super) fn is_refused(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{2028}' | '\u{2029}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}')
}

/// A text of a user as messages and rows show it: what no line of text holds stands as its code,
/// `\u{1b}`.
pub fn escaped(text: &str) -> Cow<'_, str> {
    if !text.contains(is_refused) {
        return Cow::Borrowed(text);
    }
    let mut shown = String::with_capacity(text.len());
    for c in text.chars() {
        if is_refused(c) {
            shown.extend(c.escape_unicode());
        } else {
            shown.push(c);
        }
    }
    Cow::Owned(shown)
}

impl fmt::Display for TextFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => out.write_str("is empty; fill it in or take the key out"),
            Self::Character(c) => {
                write!(
                    out,
                    "holds a character that is not printed (U+{:04X}); write plain text",
                    u32::from(*c)
                )
            }
            Self::Long => write!(out, "is longer than {} columns; shorten it", Text::MOST_COLUMNS),
        }
    }
}

impl fmt::Display for Text {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0)
    }
}

impl std::ops::Deref for Text {
    type Target = str;

    fn deref(&self) -> &str {
        &self.0
    }
}

impl AsRef<str> for Text {
    fn as_ref(&self) -> &str {
        &self.0
    }
}
