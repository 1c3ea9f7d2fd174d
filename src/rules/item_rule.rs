//! Owns one screening item.

use super::{Basis, ClearRule, Group, Limbs, Severity, Urgency};
use crate::anatomy::Limb;

/// What else changes the weight of an item.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WeighWhen {
    /// Nothing else.
    Always,
    /// The cause of the swelling is known.
    CauseKnown,
    /// A toe pressure of the passing band, still valid, and no wound on the foot.
    ToeSoundNoFootWound,
}

impl WeighWhen {
    /// The words that files use.
    pub const WORDS: [(&'static str, Self); 3] = [
        ("always", Self::Always),
        ("cause-known", Self::CauseKnown),
        ("toe-sound-no-foot-wound", Self::ToeSoundNoFootWound),
    ];

    /// The word for it.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, when)| *when == self).map_or("", |(word, _)| word)
    }
}

/// Another weight of an item, on one limb or under a condition.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WeighsElse {
    /// On which limb.
    pub limbs: Limbs,
    /// When.
    pub when: WeighWhen,
    /// What it weighs then.
    pub severity: Severity,
}

/// Where the answer to an item comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AnsweredBy {
    /// The record's `screening`.
    Screening,
    /// The record's `cause`.
    Cause,
    /// The record's `age_band`.
    AgeBand,
}

/// One screening item and what its presence means.
#[derive(Clone, Debug)]
pub struct ItemRule {
    /// Its id, as records name it.
    pub id: String,
    /// Where it is asked.
    pub limbs: Limbs,
    /// Its group; none for what is judged and not asked (`child`).
    pub group: Option<Group>,
    /// Where the answer comes from.
    pub answered_by: AnsweredBy,
    /// What is looked for, as it stands under the group's question.
    pub condition: String,
    /// What helps to answer, if anything.
    pub help: Option<String>,
    /// What its presence weighs.
    pub severity: Severity,
    /// Where it weighs something else; the first that holds counts.
    pub otherwise: Vec<WeighsElse>,
    /// How soon somebody has to act.
    pub urgency: Urgency,
    /// Whether its presence also puts off measuring: girths taken now are not used.
    pub postpone: bool,
    /// Its family of grades, of which a record names one.
    pub family: Option<String>,
    /// Who may clear it.
    pub cleared_by: Vec<ClearRule>,
    /// What the report says when it is present.
    pub finding: String,
    /// What to do next.
    pub next: String,
    /// What it rests on.
    pub basis: Basis,
    /// Where it was read.
    pub source: String,
}

impl ItemRule {
    /// What it weighs on `limb`; `holds` tells whether a condition holds.
    pub fn weight(&self, limb: Limb, holds: impl Fn(WeighWhen) -> bool) -> Severity {
        let other = self
            .otherwise
            .iter()
            .find(|one| one.limbs.include(limb) && (one.when == WeighWhen::Always || holds(one.when)));
        other.map_or(self.severity, |one| one.severity)
    }

    /// The mildest that it can weigh on `limb`.
    pub fn mildest(&self, limb: Limb) -> Severity {
        let always =
            self.otherwise.iter().find(|one| one.limbs.include(limb) && one.when == WeighWhen::Always);
        let base = always.map_or(self.severity, |one| one.severity);
        let others = self.otherwise.iter().filter(|one| one.limbs.include(limb));
        others.map(|one| one.severity).fold(base, Severity::max)
    }
}
