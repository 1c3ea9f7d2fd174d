//! Owns the whole catalogue and the finding of a word in it.

use super::fill::filled;
use super::normal::{normal, singular};
use super::{Entry, Glossary, Kind, Lead, Topic};
use super::{of_findings, of_keys, of_numbers, of_rules, of_schemes, of_sets};
use crate::garment::Schemes;
use crate::input::nearest_word;
use crate::rules::{Rules, SHIPPED_RULES, read_shipped_rules};

/// Most suggestions for a word that is not known (house rule: as many as are read).
const MOST_NEAR: usize = 4;

/// Every entry, with the rules and schemes in use.
#[derive(Clone, Debug)]
pub struct Catalogue {
    entries: Vec<Entry>,
    leads: Vec<Lead>,
}

impl Catalogue {
    /// The catalogue of a set of rules and the schemes in use.
    pub fn of(rules: &Rules, schemes: &Schemes) -> Self {
        let glossary = Glossary::shipped().unwrap_or_default();
        let mut entries: Vec<Entry> = glossary.words.iter().map(super::Word::entry).collect();
        for entry in &mut entries {
            entry.meaning = filled(&entry.meaning, rules);
            for rule in &mut entry.rule {
                *rule = filled(rule, rules);
            }
        }
        entries.extend(of_findings::entries(rules));
        entries.extend(of_rules::entries(rules));
        entries.extend(of_numbers::entries(rules));
        entries.extend(of_sets::entries(rules));
        entries.extend(of_schemes::entries(schemes));
        entries.push(of_rules::of_set(rules));
        let others = SHIPPED_RULES.iter().filter(|(id, _)| *id != rules.id);
        entries.extend(others.filter_map(|(id, _)| Some(of_rules::of_set(&read_shipped_rules(id).ok()?))));
        entries.extend(of_keys::entries());
        entries.sort_by_key(|entry| entry.kind);
        Self { entries, leads: glossary.leads }
    }

    /// Every entry, kind by kind.
    pub fn all(&self) -> &[Entry] {
        &self.entries
    }

    /// What people type, and where it leads.
    pub fn leads(&self) -> &[Lead] {
        &self.leads
    }

    /// The entries of one kind.
    pub fn of_kind(&self, kind: Kind) -> impl Iterator<Item = &Entry> {
        self.entries.iter().filter(move |entry| entry.kind == kind)
    }

    /// The entries that a word is the word of or leads to, whichever way it is spelt; own words first.
    /// Keys come only where nothing else is called so.
    pub fn find(&self, word: &str) -> Vec<&Entry> {
        let wanted = normal(word);
        let mut found = self.exact(&wanted);
        if found.is_empty()
            && let Some(stem) = singular(&wanted)
        {
            found = self.exact(&stem);
        }
        let (keys, others): (Vec<&Entry>, Vec<&Entry>) =
            found.into_iter().partition(|entry| matches!(entry.kind, Kind::Key | Kind::ReportKey));
        if others.is_empty() { keys } else { others }
    }

    fn exact(&self, wanted: &str) -> Vec<&Entry> {
        let is = |name: &str| normal(name) == wanted;
        let leads: Vec<&Lead> =
            self.leads.iter().filter(|lead| lead.typed.iter().any(|typed| is(typed))).collect();
        let rank = |entry: &Entry| {
            if is(&entry.word) {
                Some(0)
            } else if entry.printed.iter().chain(&entry.file).any(|name| is(name)) {
                Some(1)
            } else if entry.typed.iter().any(|name| is(name))
                || leads.iter().any(|lead| lead.to == entry.word)
            {
                Some(2)
            } else {
                None
            }
        };
        let mut found: Vec<(u8, &Entry)> =
            self.entries.iter().filter_map(|entry| rank(entry).map(|rank| (rank, entry))).collect();
        found.sort_by_key(|(rank, _)| *rank);
        found.into_iter().map(|(_, entry)| entry).collect()
    }

    /// The words nearest to one that is not known, best first.
    pub fn near(&self, word: &str) -> Vec<String> {
        let wanted = normal(word);
        let mut names: Vec<String> = self.entries.iter().flat_map(Entry::names).map(normal).collect();
        names.extend(self.leads.iter().flat_map(|lead| &lead.typed).map(|typed| normal(typed)));
        names.extend(Topic::ALL.iter().map(|topic| topic.word().to_owned()));
        names.sort_unstable();
        names.dedup();
        let mut near = Vec::new();
        while near.len() < MOST_NEAR
            && let Some(one) = nearest_word(&wanted, names.iter().map(String::as_str)).map(str::to_owned)
        {
            names.retain(|name| *name != one);
            near.push(one);
        }
        let holding =
            names.iter().filter(|name| wanted.len() > 3 && name.split('-').any(|part| part == wanted));
        let room = MOST_NEAR - near.len();
        near.extend(holding.take(room).cloned().collect::<Vec<_>>());
        near
    }
}
