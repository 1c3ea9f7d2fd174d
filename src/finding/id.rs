//! Owns which finding it is.

use super::Entry;

/// Which finding: one of our own list, or one that the rules name (a screening item).
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FindingId {
    /// One of [`super::ALL`].
    Own(&'static Entry),
    /// A screening item, by its id in the rules.
    Item(String),
}

impl FindingId {
    /// The id.
    pub fn text(&self) -> &str {
        match self {
            Self::Own(entry) => entry.id,
            Self::Item(id) => id,
        }
    }

    /// Whether it is this kind.
    pub fn is(&self, entry: &Entry) -> bool {
        self.text() == entry.id
    }
}
