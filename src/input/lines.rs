//! Owns where the lines of a text begin, counted once for many places. Does not read files.

/// The lines of a text.
pub(super) struct Lines<'t> {
    text: &'t str,
    /// Byte of each line's start.
    starts: Vec<usize>,
}

impl<'t> Lines<'t> {
    /// Counts the lines of a text once.
    pub(super) fn of(text: &'t str) -> Self {
        let starts = std::iter::once(0).chain(text.match_indices('\n').map(|(at, _)| at + 1)).collect();
        Self { text, starts }
    }

    /// The text of line `line` (from 1), without its end; empty where there is none.
    pub(super) fn line(&self, line: usize) -> &'t str {
        let Some(start) = line.checked_sub(1).and_then(|at| self.starts.get(at)) else { return "" };
        let rest = self.text.get(*start..).unwrap_or_default();
        let end = self.starts.get(line).map_or(rest.len(), |next| next - start);
        rest.get(..end).unwrap_or_default().trim_end_matches(['\n', '\r'])
    }
}
