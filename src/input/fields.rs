//! Owns the walk over one block of keys: each key is asked for once; what nobody asked for, what
//! stands twice, and what a decimal comma has split, is a problem.

use std::cell::RefCell;
use std::collections::BTreeSet;

use super::item::NO_VALUE;
use super::suggest::nearest_word;
use super::{Entry, Item, Kind, Spot};

/// The keys of one block.
pub struct Fields<'r> {
    item: Item<'r>,
    entries: &'r [Entry],
    asked: RefCell<Vec<&'static str>>,
    /// Places among the entries of keys whose value a decimal comma has split, and of what it split off.
    split: BTreeSet<usize>,
}

impl<'r> Fields<'r> {
    pub(super) fn new(item: Item<'r>, entries: &'r [Entry]) -> Self {
        let mut names = BTreeSet::new();
        for entry in entries {
            let name = entry.name();
            if !names.insert(name) && !name.is_empty() {
                item.reader.raise(
                    entry.key.spot,
                    item.field.clone(),
                    format!("the key `{name}` stands twice in this block; keep one"),
                );
            }
        }
        let split = raise_splits(&item, entries);
        Self { item, entries, asked: RefCell::default(), split }
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

    /// The value of a key that may be absent.
    pub fn optional(&self, key: &'static str) -> Option<Item<'r>> {
        self.asked.borrow_mut().push(key);
        let entry = self.whole_entries().find(|entry| entry.name() == key)?;
        let item = Item::new(self.item.reader, &entry.value, self.item.child_field(key));
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
            self.item.reader.raise(
                self.spot(),
                self.item.field.clone(),
                format!("the key `{key}` is missing; add {accepted}"),
            );
        }
        self.optional(key)
    }

    /// Every entry that no decimal comma has split, for blocks whose keys are data (landmarks, lengths).
    pub fn each(&self) -> impl Iterator<Item = (String, Spot, Item<'r>)> {
        self.whole_entries().map(|entry| {
            let name = entry.name().to_owned();
            let item = Item::new(self.item.reader, &entry.value, self.item.child_field(&name));
            (name, entry.key.spot, item)
        })
    }

    /// Raises every key that nobody asked for.
    pub fn finish(&self) {
        let asked = self.asked.borrow();
        for entry in self.whole_entries() {
            let name = entry.name();
            if asked.contains(&name) {
                continue;
            }
            let what = if name.is_empty() {
                "a key that is no text; keys are plain words".to_owned()
            } else {
                let known = asked.join(", ");
                match nearest_word(name, asked.iter().copied()) {
                    Some(near) => format!("the key `{name}` is not known; did you mean `{near}`?"),
                    None => format!("the key `{name}` is not known here; accepted: {known}"),
                }
            };
            self.item.reader.raise(entry.key.spot, self.item.field.clone(), what);
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
