//! Owns how much a finding weighs.

/// How much a finding weighs, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Do not fit; medical opinion first.
    Stop,
    /// Someone of a named role must clear it before fitting.
    ClearFirst,
    /// Fit with extra checks.
    Caution,
    /// For information.
    Note,
}

impl Severity {
    /// The words that files, reports and people use.
    pub const WORDS: [(&'static str, Self); 4] = [
        ("stop", Self::Stop),
        ("clear-first", Self::ClearFirst),
        ("caution", Self::Caution),
        ("note", Self::Note),
    ];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Stop => "stop",
            Self::ClearFirst => "clear-first",
            Self::Caution => "caution",
            Self::Note => "note",
        }
    }
}
