//! Owns positions along a limb and lengths between landmarks, in tenths of a millimetre.

/// A place along the limb from the record's origin, increasing toward the trunk; −100 cm to 200 cm.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Position(i32);

impl Position {
    /// A position of `tenths` tenths of a millimetre; none outside −10 000 to 20 000 (house rule).
    pub fn from_tenths(tenths: i64) -> Option<Self> {
        (-10_000..=20_000).contains(&tenths).then(|| i32::try_from(tenths).ok().map(Self)).flatten()
    }

    /// Tenths of a millimetre.
    pub fn tenths(self) -> i64 {
        i64::from(self.0)
    }

    /// Centimetres.
    pub fn cm(self) -> f64 {
        f64::from(self.0) / 100.0
    }
}

/// A length along the limb between two landmarks, 0.01 cm to 200 cm.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Span(u32);

impl Span {
    /// A length of `tenths` tenths of a millimetre; none outside 1 to 20 000 (house rule).
    pub fn from_tenths(tenths: i64) -> Option<Self> {
        (1..=20_000).contains(&tenths).then(|| u32::try_from(tenths).ok().map(Self)).flatten()
    }

    /// Tenths of a millimetre.
    pub fn tenths(self) -> i64 {
        i64::from(self.0)
    }

    /// Centimetres.
    pub fn cm(self) -> f64 {
        f64::from(self.0) / 100.0
    }
}
