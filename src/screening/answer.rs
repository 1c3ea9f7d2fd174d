//! Owns how one question was answered.

use jiff::civil::Date;

/// Why a question is open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WhyOpen {
    /// Nobody answered it.
    NotAnswered,
    /// Asked, and not known.
    Unknown,
    /// Answered without a date.
    Undated,
    /// Answered with a date ahead of today.
    Ahead,
    /// Answered too long ago.
    RunOut(Date),
    /// Answered without a side where each side is asked.
    NoSide,
    /// Answered before the swelling grew.
    BeforeWorsening(Date),
}

/// How one question was answered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Answer {
    /// It is there.
    Present {
        /// When it was asked, if that is dated.
        on: Option<Date>,
        /// Whether it was answered for this side.
        of_side: bool,
    },
    /// It is not there.
    Absent {
        /// When it was asked.
        on: Date,
    },
    /// Not answered in a way that counts.
    Open(WhyOpen),
}

impl Answer {
    /// Whether it is there.
    pub fn is_present(self) -> bool {
        matches!(self, Self::Present { .. })
    }

    /// Whether it is open.
    pub fn is_open(self) -> bool {
        matches!(self, Self::Open(_))
    }

    /// Whether it is not there, by an answer that counts.
    pub fn is_absent(self) -> bool {
        matches!(self, Self::Absent { .. })
    }
}
