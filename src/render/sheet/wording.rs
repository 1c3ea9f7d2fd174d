//! Owns small matters of words: full stops, dashes.

use crate::report::Figure;
use crate::words::capital;

/// What stands in a cell that has nothing to say.
pub(in crate::render) const EMPTY: &str = "\u{2013}";

/// The text with a full stop, unless it ends in one.
pub(in crate::render) fn sentence(text: &str) -> String {
    let text = capital(text.trim());
    if text.is_empty() || text.ends_with(['.', '!', '?', ':']) { text } else { text + "." }
}

/// A figure's text, or a dash.
pub(in crate::render) fn text(figure: Option<&Figure>) -> String {
    figure.map_or_else(|| EMPTY.to_owned(), |figure| figure.text.clone())
}
