//! Owns what a finding holds.

use super::{FindingId, FindingPlace};
use crate::rules::{Basis, Severity};

/// Who cleared a review.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClearedBy {
    /// The role.
    pub role: String,
    /// The reason.
    pub reason: String,
    /// The date, as written.
    pub on: String,
}

/// One finding.
#[derive(Clone, Debug)]
pub struct Finding {
    /// What was found.
    pub id: FindingId,
    /// How much it weighs.
    pub severity: Severity,
    /// What it is about.
    pub place: FindingPlace,
    /// The figures that it rests on, named with their unit.
    pub figures: Vec<(&'static str, f64)>,
    /// One or two sentences.
    pub sentence: String,
    /// What to do next; empty when the sentence says it.
    pub next: String,
    /// What the rule behind it rests on.
    pub basis: Basis,
    /// Where the rule was read, if anywhere.
    pub source: String,
    /// Who cleared it.
    pub cleared: Option<ClearedBy>,
    /// Whether it is a question that stops a fitting until answered.
    pub is_question: bool,
}

impl Finding {
    pub(super) fn new(
        id: FindingId,
        severity: Severity,
        place: FindingPlace,
        basis: Basis,
        sentence: String,
    ) -> Self {
        Self {
            id,
            severity,
            place,
            figures: Vec::new(),
            sentence,
            next: String::new(),
            basis,
            source: String::new(),
            cleared: None,
            is_question: false,
        }
    }

    #[must_use]
    pub(super) fn with(mut self, figure: &'static str, value: f64) -> Self {
        self.figures.push((figure, value));
        self
    }

    #[must_use]
    pub(super) fn next(mut self, next: impl Into<String>) -> Self {
        self.next = next.into();
        self
    }

    #[must_use]
    pub(super) fn source(mut self, source: impl Into<String>) -> Self {
        self.source = source.into();
        self
    }

    #[must_use]
    pub(super) fn question(mut self) -> Self {
        self.is_question = true;
        self
    }

    /// Whether it still stands in the way: a stop, or a review that nobody cleared.
    pub fn is_open_review(&self) -> bool {
        self.severity == Severity::Review && self.cleared.is_none()
    }
}
