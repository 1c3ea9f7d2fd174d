//! Owns the keys of one block.

use super::{Form, Key, Need};

/// A block of keys.
#[derive(Debug)]
pub struct Block {
    /// Its name in words, for schemas: `record`, `mark`.
    pub name: &'static str,
    /// Its keys, in the order in which they are best written.
    pub keys: &'static [Key],
    /// The form behind keys that are the file's own words, beside those listed.
    pub open: Option<Form>,
    /// Groups of keys of which one has to be there.
    pub one_needed: &'static [&'static [&'static str]],
    /// Pairs of keys of which only one may be there.
    pub not_both: &'static [(&'static str, &'static str)],
}

impl Block {
    /// A block of nothing but these keys.
    pub const fn of(name: &'static str, keys: &'static [Key]) -> Self {
        Self { name, keys, open: None, one_needed: &[], not_both: &[] }
    }

    /// The same with groups of keys of which one has to be there.
    #[must_use]
    pub const fn one_of(mut self, groups: &'static [&'static [&'static str]]) -> Self {
        self.one_needed = groups;
        self
    }

    /// The same with pairs of keys of which only one may be there.
    #[must_use]
    pub const fn not_both(mut self, pairs: &'static [(&'static str, &'static str)]) -> Self {
        self.not_both = pairs;
        self
    }

    /// A key by name.
    pub fn key(&self, name: &str) -> Option<&'static Key> {
        self.keys.iter().find(|key| key.name == name)
    }

    /// The key meant by another word for it.
    pub fn meant(&self, word: &str) -> Option<&'static Key> {
        self.keys.iter().find(|key| key.also.contains(&word))
    }

    /// The keys that have to be there.
    pub fn required(&self) -> impl Iterator<Item = &'static Key> {
        self.keys.iter().filter(|key| key.need == Need::Required)
    }
}
