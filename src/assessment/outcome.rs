//! Owns the outcomes and their order.

/// What a report states, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Outcome {
    /// Do not fit.
    Stop,
    /// Someone named must clear something.
    Refer,
    /// Questions or measures are missing, or a girth has to be measured again.
    Incomplete,
    /// No stock size serves.
    MadeToMeasure,
    /// A size was found, its fall is not judged.
    FallUnknown,
    /// Go on to a trial fitting.
    TrialFitting,
}

impl Outcome {
    /// Every outcome, worst first.
    pub const ALL: [Self; 6] = [
        Self::Stop,
        Self::Refer,
        Self::Incomplete,
        Self::MadeToMeasure,
        Self::FallUnknown,
        Self::TrialFitting,
    ];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Stop => "stop",
            Self::Refer => "refer",
            Self::Incomplete => "incomplete",
            Self::MadeToMeasure => "made-to-measure",
            Self::FallUnknown => "fall-unknown",
            Self::TrialFitting => "trial-fitting",
        }
    }

    /// The words on paper.
    pub fn spoken(self) -> &'static str {
        match self {
            Self::Stop => "Stop",
            Self::Refer => "Refer",
            Self::Incomplete => "Incomplete",
            Self::MadeToMeasure => "Made to measure",
            Self::FallUnknown => "Fall unknown",
            Self::TrialFitting => "Trial fitting",
        }
    }

    /// Whether no line may invite to fit.
    pub fn forbids_fitting(self) -> bool {
        matches!(self, Self::Stop | Self::Refer)
    }
}
