//! Owns what a judgement rests on.

/// What a judgement of the fall rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GradientBasis {
    /// Pressures that a sensor read.
    Readings,
    /// Pressures by a fabric's curve.
    Fabric,
    /// Stretch alone, with tension rising as a power of it.
    Stretch,
}

impl GradientBasis {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Readings => "readings",
            Self::Fabric => "fabric",
            Self::Stretch => "stretch",
        }
    }
}
