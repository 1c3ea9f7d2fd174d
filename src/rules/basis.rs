//! Owns the words that say what a value rests on.

/// What a value rests on. Never promoted from one to another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// The text or its abstract was read.
    Published,
    /// Read in a source that quotes the original.
    Secondary,
    /// Recalled, to be checked against the original.
    Memory,
    /// Worked out from unit definitions or geometry.
    Derived,
    /// A habit of the trade without a source.
    CommonPractice,
    /// Ours.
    HouseRule,
    /// Demo and test data only.
    Invented,
    /// Stated by the user's own file.
    UserSupplied,
}

impl Basis {
    /// The words that files use.
    pub const WORDS: [(&'static str, Self); 7] = [
        ("published", Self::Published),
        ("secondary", Self::Secondary),
        ("memory", Self::Memory),
        ("derived", Self::Derived),
        ("common practice", Self::CommonPractice),
        ("house rule", Self::HouseRule),
        ("invented", Self::Invented),
    ];

    /// The word for it.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, basis)| *basis == self).map_or("user-supplied", |(word, _)| word)
    }
}
