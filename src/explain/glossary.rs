//! Owns the glossary: the words that no table of rules or schemes explains, and what people type instead.
//!
//! Source: `src/explain/glossary.yaml`, each word with its own.

use serde::Deserialize;

use super::{Entry, Kind};
use crate::anatomy::{Landmark, Limb};
use crate::words;

/// The glossary inside the program, as JSON.
const GLOSSARY: &str = include_str!(concat!(env!("OUT_DIR"), "/glossary.json"));

/// The glossary.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Glossary {
    /// `glossary/1`.
    pub tapeline: String,
    /// The words.
    pub words: Vec<Word>,
    /// What people type, and where it leads.
    pub leads: Vec<Lead>,
    /// Labels of several words that pages print.
    pub labels: Vec<Label>,
}

/// A label that a page prints, and the words of the glossary that it is made of.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Label {
    /// The label.
    pub label: String,
    /// The words it is made of.
    pub of: Vec<String>,
}

/// One word.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Word {
    /// The word.
    pub word: String,
    /// What it is about.
    pub kind: Kind,
    /// What it means.
    pub meaning: String,
    /// Its rule, if it has one.
    #[serde(default)]
    pub rule: String,
    /// What the rule rests on; empty for a rule of our own.
    #[serde(default)]
    pub basis: String,
    /// Where it was read; empty for our own.
    #[serde(default)]
    pub source: String,
    /// How it stands on paper.
    #[serde(default)]
    pub printed: Vec<String>,
    /// Its keys in files and JSON.
    #[serde(default)]
    pub file: Vec<String>,
    /// What people type instead.
    #[serde(default)]
    pub typed: Vec<String>,
}

/// What people type, and the entry that it leads to.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lead {
    /// What is typed.
    pub typed: Vec<String>,
    /// Where it leads: a word of the catalogue.
    pub to: String,
}

impl Glossary {
    /// The glossary inside the program.
    ///
    /// # Errors
    /// What is wrong with the file inside the program; a test keeps it free of that.
    pub fn shipped() -> Result<Self, serde_json::Error> {
        serde_json::from_str(GLOSSARY)
    }
}

impl Word {
    /// Its entry, the numbers of the rules not yet filled in.
    pub(super) fn entry(&self) -> Entry {
        let basis = if self.basis.is_empty() { "house rule" } else { &self.basis };
        let ours = self.source.is_empty() && self.rule.is_empty();
        let source = if ours { "our own word" } else { &self.source };
        let mut entry = Entry::new(self.kind, &self.word, &self.meaning)
            .rules([self.rule.clone()])
            .rests_on(basis, source)
            .said(self.printed.clone())
            .typed(self.typed.clone());
        entry.file.clone_from(&self.file);
        if let Some(landmark) = self.landmark() {
            place(&mut entry, landmark);
        }
        entry
    }

    /// The landmark that it names, if it is one.
    pub fn landmark(&self) -> Option<Landmark> {
        Landmark::parse_word(&self.word).filter(|_| self.kind == Kind::Landmark)
    }
}

/// Letter, limb and ways of saying a landmark.
fn place(entry: &mut Entry, landmark: Landmark) {
    let limb = match landmark.limb() {
        Limb::Arm => "arm",
        Limb::Leg => "leg",
    };
    entry.rule.push(format!(
        "Letter {} of the {limb}. Said: {}, {}. Files take the word, or the letter once the limb is known.",
        landmark.letter(),
        words::label(landmark),
        words::at(landmark)
    ));
    entry.printed.extend([words::label(landmark), words::noun(landmark), words::at(landmark)]);
    entry.typed.extend([landmark.letter().to_owned(), format!("{} {limb}", landmark.letter())]);
}
