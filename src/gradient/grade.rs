//! Owns how certain a rise is.

/// How certain it is that the pressure rises somewhere toward the trunk, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Grade {
    /// It rises, as sure as the measurements go.
    Certain,
    /// More likely than not.
    Likely,
    /// Neither a fall nor a rise.
    Undecided,
    /// It falls on the whole; a rise somewhere is possible.
    Possible,
    /// It falls.
    None,
}

impl Grade {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Certain => "certain",
            Self::Likely => "likely",
            Self::Undecided => "undecided",
            Self::Possible => "possible",
            Self::None => "none",
        }
    }

    /// The worse of two.
    #[must_use]
    pub fn worse(self, other: Self) -> Self {
        self.min(other)
    }
}
