//! Owns the outcomes and their order.

/// What a report comes to, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    /// Do not fit.
    Stop,
    /// Someone named must clear something.
    Refer,
    /// Questions or measures are missing.
    Incomplete,
    /// No stock size serves.
    MadeToMeasure,
    /// A size holds, its gradient is not judged.
    Unproven,
    /// Go on to a trial fitting.
    TryOn,
}

impl Outcome {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Stop => "stop",
            Self::Refer => "refer",
            Self::Incomplete => "incomplete",
            Self::MadeToMeasure => "made-to-measure",
            Self::Unproven => "unproven",
            Self::TryOn => "try-on",
        }
    }

    /// How a chart with this outcome ranks against others, best first: a size to go on with, then
    /// one to be looked at, then none, then not judged, then one that must not be used.
    pub(super) fn rank_of_chart(self) -> u8 {
        match self {
            Self::TryOn => 0,
            Self::Unproven => 1,
            Self::Refer => 2,
            Self::MadeToMeasure => 3,
            Self::Incomplete => 4,
            Self::Stop => 5,
        }
    }
}
