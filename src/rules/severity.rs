//! Owns how much a finding weighs.

/// How much a finding weighs, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Do not fit; medical opinion first.
    Stop,
    /// Someone named must clear it before fitting.
    Review,
    /// Fit with extra checks.
    Care,
    /// For information.
    Note,
}

impl Severity {
    /// The words that files use.
    pub const WORDS: [(&'static str, Self); 4] =
        [("stop", Self::Stop), ("review", Self::Review), ("care", Self::Care), ("note", Self::Note)];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Stop => "stop",
            Self::Review => "review",
            Self::Care => "care",
            Self::Note => "note",
        }
    }
}
