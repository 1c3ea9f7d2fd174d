//! Owns a name with what is said of it.

/// A name with what is said of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// The name.
    pub name: String,
    /// What is said, one text a line.
    pub said: Vec<String>,
}

impl Entry {
    /// A name with one text.
    pub fn new(name: impl Into<String>, said: impl Into<String>) -> Self {
        Self { name: name.into(), said: vec![said.into()] }
    }

    /// The same with a further line.
    #[must_use]
    pub fn and(mut self, said: impl Into<String>) -> Self {
        self.said.push(said.into());
        self
    }
}
