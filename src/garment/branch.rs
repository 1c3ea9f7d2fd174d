//! Owns which branch of a fabric's loop a curve was read on.

/// A branch of the loop of pulling and letting go.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Branch {
    /// While the weights come off: where worn fabric sits (memory, medium).
    #[default]
    Return,
    /// While the weights go on: overestimates what the garment keeps up.
    Loading,
}

impl Branch {
    /// The words that files use.
    pub const WORDS: [(&'static str, Self); 2] = [("return", Self::Return), ("loading", Self::Loading)];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Return => "return",
            Self::Loading => "loading",
        }
    }

    /// Whether a curve of it gives more pressure than the worn garment keeps.
    pub fn overestimates(self) -> bool {
        self == Self::Loading
    }
}
