//! Owns one limit of an arterial value.

use super::{Basis, Severity};

/// Which arterial value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ArterialValue {
    /// Ankle-brachial pressure index, a plain number.
    Abpi,
    /// Ankle systolic pressure, mmHg.
    AnkleSystolic,
    /// Toe pressure, mmHg.
    Toe,
    /// Transcutaneous oxygen pressure, mmHg.
    Tcpo2,
}

impl ArterialValue {
    /// The words that files use, which are also the findings' ids.
    pub const WORDS: [(&'static str, Self); 4] = [
        ("abpi", Self::Abpi),
        ("ankle-systolic", Self::AnkleSystolic),
        ("toe", Self::Toe),
        ("tcpo2", Self::Tcpo2),
    ];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Abpi => "abpi",
            Self::AnkleSystolic => "ankle-systolic",
            Self::Toe => "toe",
            Self::Tcpo2 => "tcpo2",
        }
    }
}

/// One limit of an arterial value; ends as written (`at_least` closed, `above` and `below` open).
#[derive(Clone, Debug)]
pub struct ArterialRule {
    /// Which value.
    pub value: ArterialValue,
    /// Holds from this value on.
    pub at_least: Option<f64>,
    /// Holds above this value.
    pub above: Option<f64>,
    /// Holds below this value.
    pub below: Option<f64>,
    /// What it weighs.
    pub severity: Severity,
    /// What the report says.
    pub finding: String,
    /// What to do next.
    pub next: String,
    /// What it rests on.
    pub basis: Basis,
    /// Where it was read.
    pub source: String,
}

impl ArterialRule {
    /// Whether the rule holds for `value`, unrounded. A slack of 1e-9 keeps a value that was
    /// converted from another unit on the side where it was written.
    pub fn holds(&self, value: f64) -> bool {
        let slack = 1e-9 * value.abs().max(1e-9);
        self.at_least.is_none_or(|limit| value >= limit - slack)
            && self.above.is_none_or(|limit| value > limit + slack)
            && self.below.is_none_or(|limit| value < limit - slack)
    }
}
