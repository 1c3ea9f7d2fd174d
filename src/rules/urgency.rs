//! Owns how soon somebody has to act.

/// How soon somebody has to act, soonest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Urgency {
    /// Call for emergency help now.
    Emergency,
    /// A doctor the same day.
    SameDay,
    /// Within the days that the rules name; the date is printed.
    Soon,
    /// At the next ordinary occasion.
    Routine,
}

impl Urgency {
    /// The words that files and reports use.
    pub const WORDS: [(&'static str, Self); 4] = [
        ("emergency", Self::Emergency),
        ("same-day", Self::SameDay),
        ("soon", Self::Soon),
        ("routine", Self::Routine),
    ];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Emergency => "emergency",
            Self::SameDay => "same-day",
            Self::Soon => "soon",
            Self::Routine => "routine",
        }
    }
}
