//! Owns the answers of one record, settled: groups resolved, doubles refused, gaps named.

use super::arterial::arterial_hits;
use crate::anatomy::Limb;
use crate::input::{Named, Reader, YesNo, nearest_word};
use crate::record::{Cleared, Record};
use crate::rules::{ArterialValue, Group, ItemRule, Rules, Severity};

/// The item that the record's `allergies` answers.
pub const ALLERGY_ITEM: &str = "material-allergy";

/// Findings of the arterial values that have no limit of their own, as `cleared` names them.
const ARTERIAL_IDS: [&str; 2] = ["no-abpi", "clinical"];

/// How an item was answered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Answer {
    /// Yes.
    Yes,
    /// No.
    No,
    /// Unknown, or not answered at all.
    Open,
}

/// The answers of one record.
#[derive(Clone, Debug, Default)]
pub struct Screened {
    /// Items answered yes that apply to the limb, in the order they are asked.
    pub yes: Vec<String>,
    /// Questions that apply and are open, in the order they are asked: items, then `observed` keys.
    pub open: Vec<String>,
    /// Whether anything at all was answered.
    pub asked: bool,
    /// Reviews cleared by someone who may.
    pub cleared: Vec<Cleared>,
    /// Reviews cleared by someone who may not; they stay.
    pub cleared_in_vain: Vec<Cleared>,
    /// Whether an answer puts off measuring.
    pub postponed: bool,
}

impl Screened {
    /// Who cleared an item or arterial finding.
    pub fn cleared_by(&self, id: &str) -> Option<&Cleared> {
        self.cleared.iter().find(|one| one.item.text == id)
    }

    /// Whether an item of the circulation group is yes or open.
    pub fn circulation_in_doubt(&self, rules: &Rules) -> bool {
        rules
            .group(Group::Circulation)
            .any(|item| self.yes.contains(&item.id) || self.open.contains(&item.id))
    }
}

/// Settles the answers of a record; what is wrong with them is raised in `reader`.
pub fn settle(reader: &Reader, record: &Record, rules: &Rules) -> Screened {
    check_names(reader, record, rules);
    let mut screened = Screened { asked: is_asked(record), ..Screened::default() };
    for item in rules.items.iter().filter(|item| item.limbs.include(record.limb)) {
        match answer(item, record) {
            Answer::Yes => {
                screened.yes.push(item.id.clone());
                screened.postponed |= item.postpone;
            }
            Answer::Open => screened.open.push(item.id.clone()),
            Answer::No => {}
        }
    }
    for rule in rules.observed.iter().filter(|rule| rule.limbs.include(record.limb)) {
        if matches!(record.observed.get(&rule.key), None | Some(YesNo::Unknown)) {
            screened.open.push(rule.key.clone());
        }
    }
    for cleared in &record.cleared {
        let may = rules.item(&cleared.item.text).is_none_or(|item| may_clear(item, &cleared.role.text));
        if may {
            screened.cleared.push(cleared.clone());
        } else {
            screened.cleared_in_vain.push(cleared.clone());
        }
    }
    screened
}

/// A block in which every name still stands under `unknown` and nobody has put a date is a template
/// as pasted: nothing was asked.
fn is_asked(record: &Record) -> bool {
    let block = &record.screening;
    let lists = [&block.none_of, &block.yes, &block.no];
    block.asked_on.is_some() || lists.iter().any(|list| !list.is_empty())
}

fn may_clear(item: &ItemRule, role: &str) -> bool {
    let role = role.to_lowercase();
    item.cleared_by.is_empty() || item.cleared_by.iter().any(|word| role.contains(&word.to_lowercase()))
}

/// A named item goes before its group.
fn answer(item: &ItemRule, record: &Record) -> Answer {
    if item.id == ALLERGY_ITEM {
        return if record.allergies.is_some() { Answer::No } else { Answer::Open };
    }
    let block = &record.screening;
    let named = |list: &[Named]| list.iter().any(|one| one.text == item.id);
    if named(&block.yes) {
        Answer::Yes
    } else if named(&block.no) {
        Answer::No
    } else if named(&block.unknown) {
        Answer::Open
    } else if item.group.is_some_and(|group| block.none_of.iter().any(|one| one.text == group.word())) {
        Answer::No
    } else {
        Answer::Open
    }
}

fn check_names(reader: &Reader, record: &Record, rules: &Rules) {
    let block = &record.screening;
    for one in &block.none_of {
        if !Group::WORDS.iter().any(|(word, _)| *word == one.text) {
            let groups = || Group::WORDS.iter().map(|(word, _)| *word);
            let what = match nearest_word(&one.text, groups()) {
                Some(near) => format!("the group `{}` is not known; did you mean `{near}`?", one.text),
                None if rules.item(&one.text).is_some() => {
                    format!("`{}` is an item, not a group; name it under `no`", one.text)
                }
                None => format!(
                    "the group `{}` is not known; groups: {}",
                    one.text,
                    groups().collect::<Vec<_>>().join(", ")
                ),
            };
            reader.raise(one.spot, "screening, none_of", what);
        }
    }
    let lists = [("yes", &block.yes), ("no", &block.no), ("unknown", &block.unknown)];
    let mut seen: Vec<(&str, &str)> = Vec::new();
    for (list, names) in lists {
        for one in names {
            let field = format!("screening, {list}");
            if one.text == ALLERGY_ITEM {
                reader.raise(one.spot, field, format!("`{ALLERGY_ITEM}` is answered by the record's `allergies`; write `allergies: []` for none, or name them there"));
            } else if rules.item(&one.text).is_none() {
                reader.raise(one.spot, field, unknown_item(&one.text, rules));
            } else if let Some((_, earlier)) = seen.iter().find(|(id, _)| *id == one.text) {
                let what = if *earlier == list {
                    format!("`{}` stands twice under `{list}`; keep one", one.text)
                } else {
                    format!("`{}` stands under `{earlier}` as well; one question has one answer", one.text)
                };
                reader.raise(one.spot, field, what);
            }
            seen.push((&one.text, list));
        }
    }
    let hits =
        if record.limb == Limb::Leg { arterial_hits(record.arterial.as_ref(), rules) } else { Vec::new() };
    for cleared in &record.cleared {
        let id = cleared.item.text.as_str();
        let arterial = ArterialValue::WORDS.iter().any(|(word, _)| *word == id) || ARTERIAL_IDS.contains(&id);
        let stopped = match rules.item(id) {
            Some(item) => item.severity == Severity::Stop,
            None => hits.iter().any(|hit| hit.rule.value.word() == id && hit.rule.severity == Severity::Stop),
        };
        if id == ALLERGY_ITEM {
            reader.raise(
                cleared.item.spot,
                "cleared, item",
                format!("`{id}` cannot be cleared; a garment with the material is taken out"),
            );
        } else if stopped {
            reader.raise(
                cleared.item.spot,
                "cleared, item",
                format!(
                    "`{id}` is a stop, and a stop cannot be cleared; it ends only when its answer changes"
                ),
            );
        } else if !arterial && rules.item(id).is_none() {
            reader.raise(cleared.item.spot, "cleared, item", unknown_item(id, rules));
        }
    }
}

fn unknown_item(text: &str, rules: &Rules) -> String {
    if Group::WORDS.iter().any(|(word, _)| *word == text) {
        return format!("`{text}` is a group; groups stand only under `none_of`, so name the item");
    }
    match nearest_word(text, rules.items.iter().map(|item| item.id.as_str())) {
        Some(near) => format!("the item `{text}` is not known; did you mean `{near}`?"),
        None => format!("the item `{text}` is not known; `tapeline explain screening` lists all"),
    }
}
