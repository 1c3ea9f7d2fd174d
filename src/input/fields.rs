//! Owns the walk over one block of keys: each key is asked for once; what nobody asked for, and
//! what stands twice, is a problem.

use std::cell::RefCell;

use super::suggest::nearest_word;
use super::{Entry, Item, Kind, Spot};

/// The keys of one block.
pub struct Fields<'r> {
    item: Item<'r>,
    entries: &'r [Entry],
    asked: RefCell<Vec<&'static str>>,
}

impl<'r> Fields<'r> {
    pub(super) fn new(item: Item<'r>, entries: &'r [Entry]) -> Self {
        for (number, entry) in entries.iter().enumerate() {
            let name = entry.name();
            if !name.is_empty() && entries.iter().take(number).any(|earlier| earlier.name() == name) {
                item.reader.raise(
                    entry.key.spot,
                    item.child_field(name),
                    format!("the key `{name}` stands twice in this block; keep one"),
                );
            }
        }
        Self { item, entries, asked: RefCell::default() }
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

    /// The value of a key that may be absent.
    pub fn optional(&self, key: &'static str) -> Option<Item<'r>> {
        self.asked.borrow_mut().push(key);
        let entry = self.entries.iter().find(|entry| entry.name() == key)?;
        let item = Item::new(self.item.reader, &entry.value, self.item.child_field(key));
        if matches!(entry.value.kind, Kind::Empty) {
            item.refuse("has no value behind it; fill it in or take the key out");
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
        let missing = !self.entries.iter().any(|entry| entry.name() == key);
        if missing {
            self.item.reader.raise(
                self.spot(),
                self.item.field.clone(),
                format!("the key `{key}` is missing; add {accepted}"),
            );
        }
        self.optional(key)
    }

    /// Every entry, for blocks whose keys are data (landmarks, lengths).
    pub fn each(&self) -> impl Iterator<Item = (String, Spot, Item<'r>)> {
        self.entries.iter().map(|entry| {
            let name = entry.name().to_owned();
            let item = Item::new(self.item.reader, &entry.value, self.item.child_field(&name));
            (name, entry.key.spot, item)
        })
    }

    /// Raises every key that nobody asked for.
    pub fn finish(&self) {
        let asked = self.asked.borrow();
        for (number, entry) in self.entries.iter().enumerate() {
            let name = entry.name();
            if asked.contains(&name) {
                continue;
            }
            let comma =
                number.checked_sub(1).and_then(|before| self.entries.get(before)).and_then(|before| {
                    let Kind::Text(value) = &before.value.kind else { return None };
                    let digits = |text: &str| !text.is_empty() && text.chars().all(|c| c.is_ascii_digit());
                    let number_before = value.chars().last().is_some_and(|c| c.is_ascii_digit());
                    let rest = name.split(' ').next().unwrap_or_default();
                    (digits(rest) && number_before && matches!(entry.value.kind, Kind::Empty))
                        .then(|| (before.name().to_owned(), format!("{value}.{name}")))
                });
            let what = if let Some((before, mended)) = comma {
                format!("a decimal comma splits the value of `{before}`; write `{before}: {mended}`")
            } else if name.is_empty() {
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
