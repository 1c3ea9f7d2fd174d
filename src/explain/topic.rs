//! Owns the pages that `explain` has beside the words.

use super::normal::normal;
use super::{Matrix, alarms, bench, screening};
use crate::document::Block;
use crate::rules::Rules;

/// A page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Topic {
    /// Every screening question.
    Screening,
    /// How often what is said is right and wrong.
    Alarms,
    /// Hazards and what keeps each away.
    Hazards,
    /// Two pulls of a strip.
    StripPull,
    /// A fabric test at the bench.
    BenchTest,
}

impl Topic {
    /// Every page.
    pub const ALL: [Self; 5] =
        [Self::Screening, Self::Alarms, Self::Hazards, Self::StripPull, Self::BenchTest];

    /// The word that asks for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Screening => "screening",
            Self::Alarms => "alarms",
            Self::Hazards => "hazards",
            Self::StripPull => "strip-pull",
            Self::BenchTest => "bench-test",
        }
    }

    /// The page that a word asks for.
    pub fn parse(word: &str) -> Option<Self> {
        let wanted = normal(word);
        Self::ALL.into_iter().find(|topic| topic.word() == wanted || topic.typed().contains(&wanted.as_str()))
    }

    fn typed(self) -> &'static [&'static str] {
        match self {
            Self::Screening => &["questions", "questionnaire"],
            Self::Alarms => &["alarm", "false-alarms", "accuracy", "sensitivity"],
            Self::Hazards => &["hazard", "risks", "controls"],
            Self::StripPull => &["strip", "two-pulls"],
            Self::BenchTest => &["bench", "fabric-test"],
        }
    }

    /// Its blocks.
    pub fn blocks(self, rules: &Rules) -> Vec<Block> {
        match self {
            Self::Screening => screening::blocks(rules),
            Self::Alarms => alarms::blocks(),
            Self::Hazards => Matrix::shipped().unwrap_or_default().blocks(),
            Self::StripPull => bench::strip_pull(),
            Self::BenchTest => bench::bench_test(),
        }
    }
}
