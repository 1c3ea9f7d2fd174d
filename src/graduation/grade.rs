//! Owns how certain a rise is.

/// How certain it is that the pressure rises between two marks, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Grade {
    /// Certain by tape and ruler.
    Certain,
    /// More likely than not.
    Likely,
    /// Possible.
    Possible,
    /// The stretch alone does not decide it.
    Undecided,
    /// No rise worth a word.
    None,
}

/// The verdict on a garment: its worst pair.
pub type Verdict = Grade;

impl Grade {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Certain => "certain",
            Self::Likely => "likely",
            Self::Possible => "possible",
            Self::Undecided => "undecided",
            Self::None => "none",
        }
    }
}

/// The limits between the grades.
#[derive(Clone, Copy, Debug)]
pub(super) struct Limits {
    pub certain: f64,
    pub likely: f64,
    pub possible: f64,
}

impl Limits {
    /// Grades one chance.
    pub(super) fn grade(self, chance: f64) -> Grade {
        if chance >= self.certain {
            Grade::Certain
        } else if chance > self.likely {
            Grade::Likely
        } else if chance >= self.possible {
            Grade::Possible
        } else {
            Grade::None
        }
    }

    /// Grades a chance known only between two ends: by the lower one for a rise, by the higher one
    /// for a fall.
    pub(super) fn grade_between(self, low: f64, high: f64) -> Grade {
        if low >= self.certain {
            Grade::Certain
        } else if low > self.likely {
            Grade::Likely
        } else if high < self.possible {
            Grade::None
        } else if high <= self.likely {
            Grade::Possible
        } else {
            Grade::Undecided
        }
    }
}
