//! Owns one limit of an arterial value.

use super::{Basis, ClearRule, Severity};

/// Which arterial value.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ArterialValue {
    /// Ankle-brachial pressure index, a plain number.
    Abpi,
    /// Ankle systolic pressure, mmHg.
    AnklePressure,
    /// Toe pressure, mmHg.
    ToePressure,
    /// Toe-brachial index, a plain number.
    ToeBrachial,
    /// Transcutaneous oxygen pressure, mmHg.
    Tcpo2,
    /// The clinical assessment, a word.
    Clinical,
    /// No value and no assessment that serves.
    Unknown,
}

impl ArterialValue {
    /// The words that files use, which are also the findings' ids.
    pub const WORDS: [(&'static str, Self); 7] = [
        ("abpi", Self::Abpi),
        ("ankle-pressure", Self::AnklePressure),
        ("toe-pressure", Self::ToePressure),
        ("toe-brachial", Self::ToeBrachial),
        ("tcpo2", Self::Tcpo2),
        ("clinical", Self::Clinical),
        ("arterial-unknown", Self::Unknown),
    ];

    /// The word for it.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, value)| *value == self).map_or("", |(word, _)| word)
    }

    /// The value of a word.
    pub fn parse(text: &str) -> Option<Self> {
        Self::WORDS.iter().find(|(word, _)| *word == text).map(|(_, value)| *value)
    }

    /// Whether it is a pressure, in mmHg.
    pub fn is_pressure(self) -> bool {
        matches!(self, Self::AnklePressure | Self::ToePressure | Self::Tcpo2)
    }

    /// Whether it is a plain index.
    pub fn is_index(self) -> bool {
        matches!(self, Self::Abpi | Self::ToeBrachial)
    }
}

/// When a limit holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ArterialWhen {
    /// Whatever else holds.
    Always,
    /// Only with diabetes or kidney failure.
    DiabetesOrKidneys,
    /// Only where neither toe pressure nor oxygen pressure decides instead.
    NotDecidedAtToe,
}

impl ArterialWhen {
    /// The words that files use.
    pub const WORDS: [(&'static str, Self); 3] = [
        ("always", Self::Always),
        ("diabetes-or-kidneys", Self::DiabetesOrKidneys),
        ("not-decided-at-toe", Self::NotDecidedAtToe),
    ];
}

/// One limit of an arterial value; ends as written (`at_least` and `at_most` closed, `above` and
/// `below` open). What no limit covers passes.
#[derive(Clone, Debug)]
pub struct ArterialRule {
    /// Which value.
    pub value: ArterialValue,
    /// Holds from this value on.
    pub at_least: Option<f64>,
    /// Holds above this value.
    pub above: Option<f64>,
    /// Holds up to this value.
    pub at_most: Option<f64>,
    /// Holds below this value.
    pub below: Option<f64>,
    /// When it holds.
    pub when: ArterialWhen,
    /// What it weighs.
    pub severity: Severity,
    /// Who may clear it, always with a cap.
    pub cleared_by: Vec<ClearRule>,
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
            && self.at_most.is_none_or(|limit| value <= limit + slack)
            && self.below.is_none_or(|limit| value < limit - slack)
    }

    /// Its ends as written.
    pub fn ends(&self) -> impl Iterator<Item = f64> {
        [self.at_least, self.above, self.at_most, self.below].into_iter().flatten()
    }
}
