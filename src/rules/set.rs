//! Owns a whole set of rules.

use super::{
    ArterialRule, ArterialValue, AssessmentRule, Basis, ClearRule, Cutoff, FindingRule, Group, GroupRule,
    ItemRule, Lowered, Material, Nearness, Number, NumberId, ObservedRule, PlausibleBand, PlausibleRatio,
    Raised, Severity, SeveritySet, TapeError, TapeSd, TapeSdRule, Validity,
};
use crate::anatomy::Limb;

/// A whole set of rules; every number and every group is there.
#[derive(Clone, Debug)]
pub struct Rules {
    /// Its id.
    pub id: String,
    /// How it is printed.
    pub label: String,
    /// Where it comes from.
    pub source: String,
    /// Groups in the order they are asked.
    pub groups: Vec<GroupRule>,
    /// Screening items in the order they are shown.
    pub items: Vec<ItemRule>,
    /// Who may clear findings that are no item.
    pub findings: Vec<FindingRule>,
    /// Arterial limits.
    pub arterial: Vec<ArterialRule>,
    /// The clinical assessment.
    pub assessment: AssessmentRule,
    /// Questions about the limb itself.
    pub observed: Vec<ObservedRule>,
    /// Materials and the words for them.
    pub materials: Vec<Material>,
    /// The numbers.
    pub numbers: Vec<Number>,
    /// What is stated of the tape beside the number `tape-sd`.
    pub tape_sds: Vec<TapeSdRule>,
    /// Bands of girths.
    pub plausible: Vec<PlausibleBand>,
    /// Bands of ratios.
    pub ratios: Vec<PlausibleRatio>,
    /// The usual limbs.
    pub nearness: Vec<Nearness>,
    /// Sets of grades of an excess.
    pub severity_sets: Vec<SeveritySet>,
    /// Two cut-offs of an excess.
    pub cutoffs: Vec<Cutoff>,
    /// Findings of the house that weigh more here.
    pub raised: Vec<Raised>,
    /// What this set makes milder than the default; every report opens with it.
    pub lowered: Vec<Lowered>,
}

impl Rules {
    /// A number, in the unit that its id names.
    pub fn number(&self, id: NumberId) -> f64 {
        self.numbers.iter().find(|number| number.id == id).map_or(f64::NAN, |number| number.value)
    }

    /// The error of the tape, mark by mark.
    pub fn tape(&self) -> TapeSd {
        TapeSd::of(self.number(NumberId::TapeSd), &self.tape_sds)
    }

    /// Where the tape's error on `limb` is stated otherwise than the number `tape-sd` has it, as said:
    /// `0.25 cm at the wrist`.
    pub fn tape_said(&self, limb: Limb) -> Vec<String> {
        let usual = TapeError::fixed(self.number(NumberId::TapeSd));
        let here = || self.tape_sds.iter().filter(|rule| rule.limbs.include(limb));
        let off = here().any(|rule| rule.landmark.is_none() && rule.error != usual);
        let kept = here().filter(|rule| rule.error != usual || (off && rule.landmark.is_some()));
        kept.map(|rule| format!("{} {}", rule.error.said(), rule.place())).collect()
    }

    /// The same as a sentence; none where it is the same everywhere.
    pub fn tape_sentence(&self, limb: Limb) -> Option<String> {
        let said = self.tape_said(limb);
        (!said.is_empty()).then(|| format!("Tape error {} (rules).", crate::words::list(&said)))
    }

    /// A number of calendar months or days, as a length of time.
    pub fn time(&self, id: NumberId) -> Validity {
        // Read as a whole number from 0 to 255.
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "read as a whole number up to 255"
        )]
        let whole = self.number(id).clamp(0.0, 255.0).round() as u16;
        match id.written() {
            super::number::Written::Days => Validity::Days(whole),
            _ => Validity::Months(whole),
        }
    }

    /// What a number rests on.
    pub fn number_basis(&self, id: NumberId) -> Basis {
        self.numbers.iter().find(|number| number.id == id).map_or(Basis::HouseRule, |number| number.basis)
    }

    /// The item of an id.
    pub fn item(&self, id: &str) -> Option<&ItemRule> {
        self.items.iter().find(|item| item.id == id)
    }

    /// The rule of a group.
    pub fn group_rule(&self, group: Group) -> Option<&GroupRule> {
        self.groups.iter().find(|one| one.id == group)
    }

    /// The items of a group.
    pub fn group(&self, group: Group) -> impl Iterator<Item = &ItemRule> {
        self.items.iter().filter(move |item| item.group == Some(group))
    }

    /// The groups that are asked on `limb`, without those of a re-order: the ones that hold an item.
    pub fn groups_of(&self, limb: Limb) -> impl Iterator<Item = &GroupRule> {
        self.groups.iter().filter(move |group| {
            !group.id.is_of_re_order() && self.group(group.id).any(|item| item.limbs.include(limb))
        })
    }

    /// Who may clear an item, an arterial value or a finding; none where nothing of that name is known.
    pub fn cleared_by(&self, id: &str) -> Option<Vec<ClearRule>> {
        if let Some(item) = self.item(id) {
            return Some(item.cleared_by.clone());
        }
        if let Some(value) = ArterialValue::parse(id) {
            return Some(match value {
                ArterialValue::Unknown => Vec::new(),
                ArterialValue::Clinical => self.assessment.cleared_by.clone(),
                _ => {
                    let mut all: Vec<ClearRule> = self
                        .arterial
                        .iter()
                        .filter(|rule| rule.value == value)
                        .flat_map(|rule| rule.cleared_by.iter().copied())
                        .collect();
                    all.sort_unstable();
                    all.dedup();
                    all
                }
            });
        }
        self.findings.iter().find(|one| one.finding == id).map(|one| one.cleared_by.clone())
    }

    /// The severity that a finding of the house is raised to, if it is.
    pub fn raised(&self, finding: &str) -> Option<Severity> {
        self.raised.iter().find(|one| one.finding == finding).map(|one| one.severity)
    }

    /// How many items rest on what, in the order of [`Basis::WORDS`].
    pub fn counts_by_basis(&self) -> Vec<(Basis, usize)> {
        let count = |basis| self.items.iter().filter(|item| item.basis == basis).count();
        Basis::WORDS
            .iter()
            .map(|(_, basis)| (*basis, count(*basis)))
            .filter(|(_, count)| *count > 0)
            .collect()
    }

    /// The label with what the items rest on: `…, 53 items: 20 published, 10 secondary, …`.
    pub fn label_with_counts(&self) -> String {
        let counts: Vec<String> =
            self.counts_by_basis().iter().map(|(basis, count)| format!("{count} {}", basis.word())).collect();
        format!("{} ({} items: {})", self.label, self.items.len(), counts.join(", "))
    }
}
