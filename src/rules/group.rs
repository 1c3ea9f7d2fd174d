//! Owns the groups of screening questions: one group is one question.

use super::{Basis, Validity};

/// A group of items that is asked as one question.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// New and sudden, in the last days.
    Today,
    /// The skin, looked at.
    Skin,
    /// Feeling, touched.
    Feeling,
    /// Why the limb is swollen.
    Cause,
    /// Operations.
    Operations,
    /// Heart, kidneys, liver.
    HeartKidneys,
    /// Circulation.
    Circulation,
    /// Lines and implants.
    Devices,
    /// Hands, help, pregnancy.
    DailyLife,
    /// A re-order: anything changed since the last record.
    Changes,
    /// A re-order: how the garment in use is worn.
    Wear,
}

impl Group {
    /// The words that records use, in the order they are asked.
    pub const WORDS: [(&'static str, Self); 11] = [
        ("today", Self::Today),
        ("skin", Self::Skin),
        ("feeling", Self::Feeling),
        ("cause", Self::Cause),
        ("operations", Self::Operations),
        ("heart-kidneys", Self::HeartKidneys),
        ("circulation", Self::Circulation),
        ("devices", Self::Devices),
        ("daily-life", Self::DailyLife),
        ("changes", Self::Changes),
        ("wear", Self::Wear),
    ];

    /// The word for it.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, group)| *group == self).map_or("", |(word, _)| word)
    }

    /// The group of a word.
    pub fn parse(text: &str) -> Option<Self> {
        Self::WORDS.iter().find(|(word, _)| *word == text).map(|(_, group)| *group)
    }

    /// Whether it is asked only when a garment is ordered again with nothing changed.
    pub fn is_of_re_order(self) -> bool {
        matches!(self, Self::Changes | Self::Wear)
    }
}

/// One group: how it is asked, and how long its answers hold.
#[derive(Clone, Debug)]
pub struct GroupRule {
    /// Which.
    pub id: Group,
    /// The question as it is asked.
    pub question: String,
    /// Whether each side is answered by itself where both limbs are fitted.
    pub per_side: bool,
    /// How long an answer holds; older ones are asked again.
    pub valid: Validity,
    /// Answers older than this are a caution; none = no caution before they run out.
    pub caution: Option<Validity>,
    /// What it rests on.
    pub basis: Basis,
    /// Where it was read.
    pub source: String,
}
