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
}

impl Block {
    /// A block of nothing but these keys.
    pub const fn of(name: &'static str, keys: &'static [Key]) -> Self {
        Self { name, keys, open: None }
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
