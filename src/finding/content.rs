//! Owns what a finding holds.

use super::{Decided, Entry, FindingId, Place, Who};
use crate::anatomy::Landmark;
use crate::rules::{Basis, Severity, Urgency};
use crate::words;

/// One finding.
#[derive(Clone, Debug)]
pub struct Finding {
    /// What was found.
    pub id: FindingId,
    /// Its name on paper.
    pub title: String,
    /// How much it weighs.
    pub severity: Severity,
    /// How soon somebody has to act.
    pub urgency: Urgency,
    /// What it is about.
    pub place: Place,
    /// One or two sentences.
    pub message: String,
    /// What to do next; never empty but for a note.
    pub next: String,
    /// Who acts; for clear-first: who may clear it (empty = nobody).
    pub who: Vec<Who>,
    /// What the rule behind it rests on.
    pub basis: Basis,
    /// Where the rule was read; empty for our own.
    pub source: String,
    /// What someone named has decided.
    pub decided: Decided,
    /// The word of the record's `confirmed` that answers it, where it is a question.
    pub question: Option<String>,
    /// Whether it holds the report up until answered.
    pub is_open: bool,
    /// The landmarks at which the garment's flat width is to be measured, where that is the next step.
    pub to_measure: Vec<Landmark>,
}

impl Finding {
    /// A finding of our list; sentence and next step are added.
    pub fn of(entry: &'static Entry, severity: Severity, place: Place) -> Self {
        Self {
            id: FindingId::Own(entry),
            title: entry.title.to_owned(),
            severity,
            urgency: match severity {
                Severity::Stop => Urgency::SameDay,
                _ => Urgency::Routine,
            },
            place,
            message: String::new(),
            next: String::new(),
            who: Vec::new(),
            basis: entry.basis,
            source: entry.source.to_owned(),
            decided: Decided::No,
            question: None,
            is_open: false,
            to_measure: Vec::new(),
        }
    }

    /// A screening item that is present, by its id in the rules; its sentence, next step and basis are added.
    pub fn of_item(id: &str, severity: Severity, place: Place) -> Self {
        Self {
            id: FindingId::Item(id.to_owned()),
            title: words::capital(&id.replace('-', " ")),
            ..Self::of(&super::not_answered::ENTRY, severity, place)
        }
    }

    /// With its sentence.
    #[must_use]
    pub fn say(mut self, message: impl Into<String>) -> Self {
        self.message = message.into();
        self
    }

    /// With its next step and who takes it.
    #[must_use]
    pub fn next(mut self, next: impl Into<String>, who: &[Who]) -> Self {
        self.next = next.into();
        self.who = who.to_vec();
        self
    }

    /// With another basis than its kind's.
    #[must_use]
    pub fn basis(mut self, basis: Basis, source: impl Into<String>) -> Self {
        self.basis = basis;
        self.source = source.into();
        self
    }

    /// With an urgency.
    #[must_use]
    pub fn urgency(mut self, urgency: Urgency) -> Self {
        self.urgency = urgency;
        self
    }

    /// With the landmarks at which a flat width is to be measured.
    #[must_use]
    pub fn measures(mut self, landmarks: Vec<Landmark>) -> Self {
        self.to_measure = landmarks;
        self
    }

    /// As a question that the record's `confirmed: [word]` answers.
    #[must_use]
    pub fn asks(mut self, word: impl Into<String>) -> Self {
        self.question = Some(word.into());
        self.is_open = true;
        self
    }

    /// As something that holds the report up until it is supplied.
    #[must_use]
    pub fn open(mut self) -> Self {
        self.is_open = true;
        self
    }

    /// With what was decided. A refusal is not asked for again: who refused says what comes instead.
    #[must_use]
    pub fn decided(mut self, decided: Decided) -> Self {
        if let Decided::Refused(by) = &decided {
            let who = Who::Role(by.role);
            self.next = format!(
                "It was refused on {} and stays so: nothing is fitted. Ask {} what is done instead.",
                words::date_short(by.on),
                who.spoken()
            );
            self.who = vec![who];
        }
        self.decided = decided;
        self
    }

    /// Whether its next step invites to order.
    pub fn orders(&self) -> bool {
        let own = [
            &super::shape_irregular::ENTRY,
            &super::hand_part_needed::ENTRY,
            &super::size_taken_out::ENTRY,
            &super::no_length::ENTRY,
        ];
        !self.is_open && own.into_iter().any(|entry| self.id.is(entry))
    }

    /// Whether someone who may has cleared it.
    pub fn is_cleared(&self) -> bool {
        matches!(self.decided, Decided::Cleared(_))
    }

    /// Whether it is clear-first and stands.
    pub fn must_be_cleared(&self) -> bool {
        self.severity == Severity::ClearFirst && !self.is_cleared() && !self.is_open
    }
}
