//! Owns a line to fill in by hand.

/// A line to write on, with its label; what is known already stands on it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Blank {
    /// The label.
    pub label: String,
    /// What stands on the line; empty where it is to be written.
    pub value: String,
    /// Its share of the width, against the other lines of its row.
    pub share: u8,
}

impl Blank {
    /// An empty line.
    pub fn new(label: impl Into<String>) -> Self {
        Self { label: label.into(), value: String::new(), share: 1 }
    }

    /// A filled line.
    pub fn filled(label: impl Into<String>, value: impl Into<String>) -> Self {
        Self { label: label.into(), value: value.into(), share: 1 }
    }

    /// The same, with another share of the width.
    #[must_use]
    pub fn wide(mut self, share: u8) -> Self {
        self.share = share.max(1);
        self
    }
}
