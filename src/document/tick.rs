//! Owns a statement with boxes to tick.

/// A statement with boxes before it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tick {
    /// Which box is ticked already, counted from 0; none for an open question.
    pub ticked: Option<usize>,
    /// The statement.
    pub text: String,
}

impl Tick {
    /// A statement that is not ticked yet.
    pub fn open(text: impl Into<String>) -> Self {
        Self { ticked: None, text: text.into() }
    }

    /// A statement whose first box is ticked where `holds`.
    pub fn known(holds: bool, text: impl Into<String>) -> Self {
        Self { ticked: holds.then_some(0), text: text.into() }
    }
}
