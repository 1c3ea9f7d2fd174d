//! Owns a girth: a positive whole number of tenths of a millimetre. Does not know which limb.

use super::decimal::nearest;

/// A girth of a limb or a garment, 0.01 cm to 2,000 cm, exact to 0.1 mm, so that cm, mm and inch
/// input of one limb compare alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Girth(u32);

impl Girth {
    /// Largest girth taken: 2,000 cm (house rule: a limb written in millimetres under `cm` is still read, so that
    /// the misreading can be named).
    pub const MOST_TENTHS: i64 = 200_000;

    /// Largest girth that no question is asked about: 200 cm (house rule: beyond any limb or garment).
    pub const UNASKED_TENTHS: i64 = 20_000;

    /// A girth of `tenths` tenths of a millimetre; none outside 1 to 200 000.
    pub fn from_tenths(tenths: i64) -> Option<Self> {
        (1..=Self::MOST_TENTHS).contains(&tenths).then(|| u32::try_from(tenths).ok().map(Self)).flatten()
    }

    /// Tenths of a millimetre.
    pub fn tenths(self) -> i64 {
        i64::from(self.0)
    }

    /// Centimetres.
    pub fn cm(self) -> f64 {
        f64::from(self.0) / 100.0
    }

    /// The mean of several readings, to the nearest tenth of a millimetre, ties up.
    pub fn mean(first: Self, rest: &[Self]) -> Self {
        let sum = rest.iter().fold(i128::from(first.0), |sum, one| sum + i128::from(one.0));
        let count = i128::try_from(rest.len()).unwrap_or_default() + 1;
        u32::try_from(nearest(sum, count)).map_or(first, Self)
    }
}
