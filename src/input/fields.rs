//! Owns the walk over one block of keys: each key is asked for once; what nobody asked for, what
//! stands twice, and what a decimal comma has split, is a problem.

use std::cell::RefCell;
use std::collections::BTreeSet;

use super::agree;
use super::item::NO_VALUE;
use super::keys::{Block, Form, Key};
use super::suggest::nearest_word;
use super::{Entry, Item, Kind, MOST_PROBLEMS, Spot};

/// The keys of one block.
pub struct Fields<'r> {
    item: Item<'r>,
    entries: &'r [Entry],
    asked: RefCell<Vec<&'static str>>,
    /// The keys of this kind of block, where they are known.
    block: Option<&'static Block>,
    /// What stands behind keys that are the file's own words.
    named: Option<Form>,
    /// Places among the entries of keys whose value a decimal comma has split, and of what it split off.
    split: BTreeSet<usize>,
}

impl<'r> Fields<'r> {
    pub(super) fn new(
        item: Item<'r>,
        entries: &'r [Entry],
        block: Option<&'static Block>,
        named: Option<Form>,
    ) -> Self {
        let mut seen = BTreeSet::new();
        for entry in entries {
            let name = entry.name();
            if !seen.insert(name) && !name.is_empty() {
                item.reader.raise(
                    entry.key.spot,
                    item.field.clone(),
                    format!("the key `{name}` stands twice in this block; keep one"),
                );
            }
        }
        let split = raise_splits(&item, entries);
        let named = named.or_else(|| block.and_then(|block| block.open));
        Self { item, entries, asked: RefCell::default(), block, named, split }
    }

    /// Whether a decimal comma has split a value of this block; its key then has no value.
    pub fn is_split(&self) -> bool {
        !self.split.is_empty()
    }

    fn whole_entries(&self) -> impl Iterator<Item = &'r Entry> {
        let whole = self.entries.iter().enumerate().filter(|(at, _)| !self.split.contains(at));
        whole.map(|(_, entry)| entry)
    }

    /// The place of the block.
    pub fn spot(&self) -> Spot {
        self.item.spot()
    }

    /// The place of a key, or of the block where the key is missing.
    pub fn spot_of(&self, key: &str) -> Spot {
        self.entries
            .iter()
            .find(|entry| entry.name() == key)
            .map_or(self.item.spot(), |entry| entry.value.spot)
    }

    /// Whether a key is there, right or wrong.
    pub fn has(&self, key: &str) -> bool {
        self.entries.iter().any(|entry| entry.name() == key)
    }

    /// What is known of a key.
    fn key(&self, name: &str) -> Option<&'static Key> {
        self.block.and_then(|block| block.key(name))
    }

    /// The value of a key that may be absent.
    pub fn optional(&self, key: &'static str) -> Option<Item<'r>> {
        self.asked.borrow_mut().push(key);
        if cfg!(debug_assertions)
            && let Some(block) = self.block
        {
            agree::note(block, key);
        }
        let entry = self.whole_entries().find(|entry| entry.name() == key)?;
        let known = self.key(key);
        let item = Item::new(self.item.reader, &entry.value, self.item.child_field(key)).under(known);
        if matches!(entry.value.kind, Kind::Empty) {
            item.refuse(NO_VALUE);
            return None;
        }
        Some(item)
    }

    /// The value of a key that may be absent or left blank (a question not answered yet).
    pub fn blank_or(&self, key: &'static str) -> Option<Item<'r>> {
        let blank =
            self.entries.iter().any(|entry| entry.name() == key && matches!(entry.value.kind, Kind::Empty));
        if blank {
            self.asked.borrow_mut().push(key);
            return None;
        }
        self.optional(key)
    }

    /// The value of a key that has to be there.
    pub fn required(&self, key: &'static str, accepted: &str) -> Option<Item<'r>> {
        if !self.has(key) {
            let what = match self.key(key) {
                Some(known) => {
                    format!("the key `{key}` is missing; add {}, as `{}`", known.about, known.example)
                }
                None => format!("the key `{key}` is missing; add {accepted}"),
            };
            self.item.reader.raise(self.spot(), self.item.field.clone(), what);
        }
        self.optional(key)
    }

    /// Every entry that no decimal comma has split, for blocks whose keys are data (landmarks, lengths).
    pub fn each(&self) -> impl Iterator<Item = (String, Spot, Item<'r>)> {
        self.whole_entries().map(|entry| {
            let name = entry.name().to_owned();
            let item = Item::new(self.item.reader, &entry.value, self.item.child_field(&name));
            let item = match self.key(&name) {
                Some(known) => item.under(Some(known)),
                None => item.of_form(self.named),
            };
            (name, entry.key.spot, item)
        })
    }

    /// Raises every key that nobody asked for.
    pub fn finish(&self) {
        let asked = self.asked.borrow();
        let mut told = 0;
        for entry in self.whole_entries() {
            let name = entry.name();
            if asked.contains(&name) {
                continue;
            }
            let what = if name.is_empty() {
                "a key that is no text; keys are plain words".to_owned()
            } else if told >= MOST_PROBLEMS {
                // Counted and never shown: as many stand before it.
                String::new()
            } else {
                self.unknown(name, &asked)
            };
            told += 1;
            self.item.reader.raise(entry.key.spot, self.item.field.clone(), what);
        }
    }

    /// What to say of a key that nobody asked for.
    fn unknown(&self, name: &str, asked: &[&'static str]) -> String {
        if self.key(name).is_some() {
            return format!("the key `{name}` has no use beside the other keys here; take it out");
        }
        let listed = self.block.map_or(&[][..], |block| block.keys).iter().map(|key| key.name);
        let mut known: Vec<&str> = listed.collect();
        known.extend(asked.iter().filter(|asked| self.key(asked).is_none()));
        let near = self
            .block
            .and_then(|block| block.meant(name))
            .map(|key| key.name)
            .or_else(|| nearest_word(name, known.iter().copied()));
        match near {
            Some(near) => {
                let line = self.key(near).map_or(String::new(), |key| format!(" write `{}`", key.example));
                format!("the key `{name}` is not known; did you mean `{near}`?{line}")
            }
            None => format!("the key `{name}` is not known here; accepted: {}", known.join(", ")),
        }
    }
}

/// `{girth: 16,9}` is a key `girth` with 16 and a key `9` with nothing: raises each value that a comma
/// has split so, and gives the places of all keys concerned.
fn raise_splits(item: &Item<'_>, entries: &[Entry]) -> BTreeSet<usize> {
    let starts = |entry: &Entry| entry.name().starts_with(|c: char| c.is_ascii_digit());
    let is_tail = |entry: &Entry| matches!(entry.value.kind, Kind::Empty) && starts(entry);
    let mut split = BTreeSet::new();
    let mut at = 0;
    while let Some(head) = entries.get(at) {
        let tails = entries.iter().skip(at + 1).take_while(|entry| is_tail(entry)).count();
        if let Kind::Text(value) = &head.value.kind
            && value.ends_with(|c: char| c.is_ascii_digit())
            && let Some(first) = entries.get(at + 1).filter(|_| tails > 0)
        {
            let parts = entries.iter().skip(at + 1).take(tails).map(Entry::name);
            let mended = parts.fold(value.clone(), |mended, part| format!("{mended}.{part}"));
            let name = head.name();
            item.reader.raise(
                first.key.spot,
                item.field.clone(),
                format!("a decimal comma splits the value of `{name}`; write `{name}: {mended}`"),
            );
            split.extend(at..=at + tails);
        }
        at += tails + 1;
    }
    split
}
