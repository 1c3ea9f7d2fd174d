//! Owns a whole set of rules.

use super::{
    ArterialRule, Basis, Group, ItemRule, Limbs, Nearness, Number, NumberId, PlausibleBand, PlausibleRatio,
    Raised, Severity, SeveritySet,
};

/// A question about the limb itself, answered under `observed`.
#[derive(Clone, Debug)]
pub struct ObservedRule {
    /// Its key in the record.
    pub key: String,
    /// Where it is asked.
    pub limbs: Limbs,
    /// The question.
    pub question: String,
    /// What it rests on.
    pub basis: Basis,
    /// Where it was read.
    pub source: String,
}

/// A whole set of rules; every number is there.
#[derive(Clone, Debug)]
pub struct Rules {
    /// Its id.
    pub id: String,
    /// How it is printed.
    pub label: String,
    /// Where it comes from.
    pub source: String,
    /// Screening questions in the order they are asked.
    pub items: Vec<ItemRule>,
    /// Arterial limits.
    pub arterial: Vec<ArterialRule>,
    /// Questions about the limb itself.
    pub observed: Vec<ObservedRule>,
    /// The numbers.
    pub numbers: Vec<Number>,
    /// Bands of girths.
    pub plausible: Vec<PlausibleBand>,
    /// Bands of ratios.
    pub ratios: Vec<PlausibleRatio>,
    /// The usual limbs.
    pub nearness: Vec<Nearness>,
    /// Severity sets.
    pub severity_sets: Vec<SeveritySet>,
    /// Findings of the house that weigh more here.
    pub raised: Vec<Raised>,
}

impl Rules {
    /// A number, in the unit that its id names.
    pub fn number(&self, id: NumberId) -> f64 {
        self.numbers.iter().find(|number| number.id == id).map_or(f64::NAN, |number| number.value)
    }

    /// What a number rests on.
    pub fn number_basis(&self, id: NumberId) -> Basis {
        self.numbers.iter().find(|number| number.id == id).map_or(Basis::HouseRule, |number| number.basis)
    }

    /// The item of an id.
    pub fn item(&self, id: &str) -> Option<&ItemRule> {
        self.items.iter().find(|item| item.id == id)
    }

    /// The severity that a finding of the house is raised to, if it is.
    pub fn raised(&self, finding: &str) -> Option<Severity> {
        self.raised.iter().find(|one| one.finding == finding).map(|one| one.severity)
    }

    /// The items of a group.
    pub fn group(&self, group: Group) -> impl Iterator<Item = &ItemRule> {
        self.items.iter().filter(move |item| item.group == Some(group))
    }
}
