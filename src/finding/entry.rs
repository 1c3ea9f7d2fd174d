//! Owns what is known of a finding beforehand: id, meaning, rule, basis. `explain` reads the same.

use crate::rules::Basis;

/// One kind of finding.
#[derive(Debug)]
pub struct Entry {
    /// Its id, as reports print it in JSON.
    pub id: &'static str,
    /// Its name on paper, a few words.
    pub title: &'static str,
    /// What it means, in a sentence.
    pub meaning: &'static str,
    /// When it holds and what it weighs.
    pub rule: &'static str,
    /// What the rule rests on.
    pub basis: Basis,
    /// Where the rule was read; empty for our own.
    pub source: &'static str,
}

impl PartialEq for Entry {
    fn eq(&self, other: &Self) -> bool {
        self.id == other.id
    }
}

impl Eq for Entry {}
