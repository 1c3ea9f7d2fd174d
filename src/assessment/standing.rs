//! Owns the order of charts that are alternatives for one part of a limb: the same for `check` and for a caseload.
//!
//! Source: house rule.

use std::cmp::Reverse;

use super::Outcome;

/// How far a chart serves a limb, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// A size takes the limb, and nothing stands against it.
    TrialFitting,
    /// A size takes the limb; its fall is not judged.
    FallUnknown,
    /// Something of it has to be cleared, or a fitter decides between sizes.
    Refer,
    /// A girth only has to be measured again, or a length is unknown, with a size at hand.
    MeasureAgain,
    /// No size serves.
    MadeToMeasure,
    /// Measures are missing.
    NotJudged,
    /// It must not be worn.
    Stop,
}

impl Standing {
    /// The standing of an outcome; `nearly` tells an incomplete one that only waits for a tape.
    pub fn of(outcome: Outcome, nearly: bool) -> Self {
        match outcome {
            Outcome::TrialFitting => Self::TrialFitting,
            Outcome::FallUnknown => Self::FallUnknown,
            Outcome::Refer => Self::Refer,
            Outcome::Incomplete if nearly => Self::MeasureAgain,
            Outcome::MadeToMeasure => Self::MadeToMeasure,
            Outcome::Incomplete => Self::NotJudged,
            Outcome::Stop => Self::Stop,
        }
    }

    fn bit(self) -> u8 {
        match self {
            Self::TrialFitting => 0,
            Self::FallUnknown => 1,
            Self::Refer => 1 << 1,
            Self::MeasureAgain => 1 << 2,
            Self::MadeToMeasure => 1 << 3,
            Self::NotJudged => 1 << 4,
            Self::Stop => 1 << 5,
        }
    }
}

/// The rank of a chart among its alternatives: the least is the best.
///
/// By what stands against it, the worst first: of two charts that both fall short in one way, the one that falls short
/// in that alone is better, so that knowing more never ranks a chart higher. Of equals the greater least margin of the
/// size that is shown (none last); of equals the chart given first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Rank {
    /// One bit for each standing that holds, the worst the highest; none for a trial fitting.
    against: u8,
    margin: Reverse<Option<i64>>,
    place: usize,
}

impl Rank {
    /// The rank of the chart at `place`; `margin` in tenths of a millimetre, negative outside.
    pub fn of(holds: impl Iterator<Item = Standing>, margin: Option<i64>, place: usize) -> Self {
        let against = holds.map(Standing::bit).fold(0, |all, one| all | one);
        Self { against, margin: Reverse(margin), place }
    }

    /// Whether two charts rank alike but for their margins and places.
    pub fn is_level_with(&self, other: &Self) -> bool {
        self.against == other.against
    }
}
