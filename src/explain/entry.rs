//! Owns one entry of the catalogue and its page.

use super::Kind;
use crate::document::{self, Block};

/// One word explained.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// The word, as reports and files write it.
    pub word: String,
    /// What it is about.
    pub kind: Kind,
    /// What it means.
    pub meaning: String,
    /// The rule, with its numbers; one text each.
    pub rule: Vec<String>,
    /// What the rule rests on.
    pub basis: String,
    /// Where it was read; empty for our own.
    pub source: String,
    /// What to do next; empty where there is nothing to do.
    pub next: String,
    /// How it stands on paper, where that differs from the word.
    pub printed: Vec<String>,
    /// Its keys in files and JSON.
    pub file: Vec<String>,
    /// What people type instead.
    pub typed: Vec<String>,
}

impl Entry {
    /// An entry of our own without anything but its meaning.
    pub(super) fn new(kind: Kind, word: impl Into<String>, meaning: impl Into<String>) -> Self {
        Self {
            word: word.into(),
            kind,
            meaning: meaning.into(),
            rule: Vec::new(),
            basis: "house rule".to_owned(),
            source: String::new(),
            next: String::new(),
            printed: Vec::new(),
            file: Vec::new(),
            typed: Vec::new(),
        }
    }

    /// The same with rules.
    #[must_use]
    pub(super) fn rules(mut self, rule: impl IntoIterator<Item = String>) -> Self {
        self.rule.extend(rule.into_iter().filter(|one| !one.is_empty()));
        self
    }

    /// The same with what it rests on.
    #[must_use]
    pub(super) fn rests_on(mut self, basis: &str, source: &str) -> Self {
        basis.clone_into(&mut self.basis);
        source.clone_into(&mut self.source);
        self
    }

    /// The same with what to do next.
    #[must_use]
    pub(super) fn then(mut self, next: &str) -> Self {
        next.clone_into(&mut self.next);
        self
    }

    /// The same with how it stands on paper.
    #[must_use]
    pub(super) fn said(mut self, printed: impl IntoIterator<Item = String>) -> Self {
        self.printed.extend(printed);
        self
    }

    /// The same with what people type instead.
    #[must_use]
    pub(super) fn typed(mut self, typed: impl IntoIterator<Item = String>) -> Self {
        self.typed.extend(typed);
        self
    }

    /// Every way it may be asked for.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        let others = self.printed.iter().chain(&self.file).chain(&self.typed);
        std::iter::once(self.word.as_str()).chain(others.map(String::as_str))
    }

    /// Its page.
    pub fn blocks(&self) -> Vec<Block> {
        let mut keys = Vec::new();
        let mut add = |name: &str, said: Vec<String>| {
            if !said.is_empty() {
                keys.push(document::Entry { name: name.to_owned(), said });
            }
        };
        add("Rule", self.rule.clone());
        let source = if self.source.is_empty() { String::new() } else { format!(": {}", self.source) };
        add("Basis", vec![format!("{}{source}", self.basis)]);
        add("Next", some(&self.next));
        let on_paper: Vec<&str> =
            self.printed.iter().map(String::as_str).filter(|one| *one != self.word).collect();
        add("On paper", some(&on_paper.join(" · ")));
        add("In files", some(&self.file.join(" · ")));
        let mut blocks = vec![Block::heading(format!("{} ({})", self.word, self.kind.word()))];
        blocks.push(Block::text(self.meaning.clone()));
        blocks.push(Block::Keys(keys));
        blocks
    }
}

fn some(text: &str) -> Vec<String> {
    if text.is_empty() { Vec::new() } else { vec![text.to_owned()] }
}
