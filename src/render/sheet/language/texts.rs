//! Owns the texts of one language.

use std::collections::BTreeMap;

use serde::Deserialize;

use super::Language;

/// The texts of one language; a test holds that every language has the same keys.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default)]
pub(in super::super) struct Texts {
    /// Its tag, `en-GB`.
    pub(in super::super) language: String,
    /// Who still has to look at it; empty where it was looked at.
    pub(in super::super) review: String,
    /// The decimal sign.
    pub(in super::super) point: String,
    date: String,
    months: Vec<String>,
    limbs: BTreeMap<String, String>,
    styles: BTreeMap<String, String>,
    texts: BTreeMap<String, String>,
    lists: BTreeMap<String, Vec<String>>,
    outcomes: BTreeMap<String, Item>,
    items: BTreeMap<String, Item>,
    same: BTreeMap<String, String>,
}

/// What is said of one matter.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default)]
pub(in super::super) struct Item {
    /// The sentence.
    pub(in super::super) say: String,
    /// What to do with the garment now worn.
    pub(in super::super) worn: String,
    /// What happens next; for outcomes.
    pub(in super::super) next: String,
    off: String,
}

impl Item {
    /// How strongly the garment now worn is left off.
    pub(in super::super) fn off(&self) -> u8 {
        self.off.parse().unwrap_or_default()
    }
}

impl Texts {
    /// The texts of a language.
    pub(in super::super) fn of(language: Language) -> Self {
        // The build made the data of files that a test reads; they cannot fail to parse.
        serde_json::from_str(language.data()).unwrap_or_default()
    }

    /// One text.
    pub(in super::super) fn text(&self, key: &str) -> &str {
        self.texts.get(key).map(String::as_str).unwrap_or_default()
    }

    /// One text with its places filled.
    pub(in super::super) fn filled(&self, key: &str, places: &[(&str, &str)]) -> String {
        places.iter().fold(self.text(key).to_owned(), |text, (name, value)| text.replace(name, value))
    }

    /// One list.
    pub(in super::super) fn list(&self, key: &str) -> &[String] {
        self.lists.get(key).map(Vec::as_slice).unwrap_or_default()
    }

    /// What is said of an outcome, by its word.
    pub(in super::super) fn outcome(&self, word: &str) -> Item {
        self.outcomes.get(word).cloned().unwrap_or_default()
    }

    /// What is said of a finding, by its id; `stops` for the values that are said by their weight.
    pub(in super::super) fn item(&self, id: &str, stops: bool) -> Option<&Item> {
        let id = self.same.get(id).map_or(id, String::as_str);
        if id == "arterial" {
            return self.items.get(if stops { "arterial-stop" } else { "arterial-clear" });
        }
        self.items.get(id)
    }

    /// A limb.
    pub(in super::super) fn limb<'t>(&'t self, printed: &'t str) -> &'t str {
        self.limbs.get(printed).map_or(printed, String::as_str)
    }

    /// A garment's style; one that the language does not know stays as the chart has it.
    pub(in super::super) fn style<'t>(&'t self, printed: &'t str) -> &'t str {
        self.styles.get(printed).map_or(printed, String::as_str)
    }

    /// A day written as 2026-03-14, in words; anything else as it is.
    pub(in super::super) fn day(&self, written: &str) -> String {
        let mut parts = written.split('-');
        let found = (|| {
            let year = parts.next()?;
            let month: usize = parts.next()?.parse().ok()?;
            let day: u8 = parts.next()?.get(..2)?.parse().ok()?;
            let name = self.months.get(month.checked_sub(1)?)?;
            let text = self.date.replace("{day}", &day.to_string()).replace("{month}", name);
            Some(text.replace("{year}", year))
        })();
        found.unwrap_or_else(|| written.to_owned())
    }

    /// A printed figure with the decimal sign of the language.
    pub(in super::super) fn figure(&self, printed: &str) -> String {
        let letters: Vec<char> = printed.chars().collect();
        let digit = |at: Option<usize>| at.and_then(|at| letters.get(at)).is_some_and(char::is_ascii_digit);
        letters
            .iter()
            .enumerate()
            .map(|(at, letter)| {
                if *letter == '.' && digit(at.checked_sub(1)) && digit(Some(at + 1)) {
                    self.point.clone()
                } else {
                    letter.to_string()
                }
            })
            .collect()
    }
}
