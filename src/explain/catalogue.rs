//! Owns the catalogue as a whole: every entry, looked up by id.

use super::{Entry, Kind, of_findings, of_outcomes, of_rules, of_schemes};
use crate::garment::Schemes;
use crate::input::nearest_word;
use crate::rules::Rules;

/// Words beside the ids that can be explained: lists and tables.
pub const TOPICS: [&str; 4] = ["screening", "hazards", "alarms", "bench-test"];

/// Every entry.
#[derive(Clone, Debug)]
pub struct Catalogue {
    entries: Vec<Entry>,
}

impl Catalogue {
    /// The catalogue of the rules and schemes in use.
    pub fn of(rules: &Rules, schemes: &Schemes) -> Self {
        let mut entries = of_outcomes::entries();
        entries.extend(of_findings::entries(rules));
        entries.extend(of_rules::entries(rules));
        entries.extend(of_schemes::entries(schemes));
        Self { entries }
    }

    /// The entries of an id; several where one word names a finding and a question.
    pub fn find(&self, id: &str) -> Vec<&Entry> {
        self.entries.iter().filter(|entry| entry.id == id).collect()
    }

    /// The entries of a kind, in their order.
    pub fn of_kind(&self, kind: Kind) -> impl Iterator<Item = &Entry> {
        self.entries.iter().filter(move |entry| entry.kind == kind)
    }

    /// Every entry.
    pub fn all(&self) -> &[Entry] {
        &self.entries
    }

    /// The id or topic nearest to a mistyped one, from this catalogue only; none where none is near.
    pub fn nearest(&self, text: &str) -> Option<&str> {
        nearest_word(text, self.entries.iter().map(|entry| entry.id.as_str()).chain(TOPICS))
    }
}
