//! Owns one screening question.

use super::{Basis, Severity};
use crate::anatomy::Limb;

/// On which limbs a question is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Limbs {
    /// One kind of limb.
    Only(Limb),
    /// Arms and legs.
    Both,
}

impl Limbs {
    /// Whether it is asked on `limb`.
    pub fn include(self, limb: Limb) -> bool {
        match self {
            Self::Only(only) => only == limb,
            Self::Both => true,
        }
    }
}

/// The group that a record may answer as a whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[expect(missing_docs, reason = "the variants are the groups' names")]
pub enum Group {
    Circulation,
    Heart,
    Nerves,
    Infection,
    Skin,
    CancerAndDevices,
    DailyLife,
}

impl Group {
    /// The words that records use.
    pub const WORDS: [(&'static str, Self); 7] = [
        ("circulation", Self::Circulation),
        ("heart", Self::Heart),
        ("nerves", Self::Nerves),
        ("infection", Self::Infection),
        ("skin", Self::Skin),
        ("cancer-and-devices", Self::CancerAndDevices),
        ("daily-life", Self::DailyLife),
    ];

    /// The word for it.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, group)| *group == self).map_or("", |(word, _)| word)
    }
}

/// One screening question and what a yes means.
#[derive(Clone, Debug)]
pub struct ItemRule {
    /// Its id, as records name it.
    pub id: String,
    /// Where it is asked.
    pub limbs: Limbs,
    /// Its group; none for the question that the record's `allergies` answers.
    pub group: Option<Group>,
    /// What a yes weighs.
    pub severity: Severity,
    /// Whether a yes is an emergency.
    pub emergency: bool,
    /// Whether a yes also puts off measuring: girths taken now are not used.
    pub postpone: bool,
    /// Words of which the clearing role must name one; empty: any role.
    pub cleared_by: Vec<String>,
    /// The question.
    pub question: String,
    /// What the report says on a yes.
    pub finding: String,
    /// What to do next.
    pub next: String,
    /// What it rests on.
    pub basis: Basis,
    /// Where it was read.
    pub source: String,
}
