//! Owns a question to the user about the record as a whole; never a refusal. It is answered by its words in
//! `confirmed`. The sentences are written elsewhere.

use jiff::civil::Date;

use super::{Affected, Confirmable, LengthName, MarkPlace, Misreading, SinceVisit, Unusual};
use crate::anatomy::{Landmark, Side};
use crate::quantity::{Girth, Position, Span};

/// What is asked, with its data.
#[derive(Clone, Debug)]
pub enum QuestionKind {
    /// Girths that adults rarely have, with the misreadings that would explain them.
    Unusual {
        /// What is unusual; at least one.
        unusual: Vec<Unusual>,
        /// Nearest to the usual limb first.
        misreadings: Vec<Misreading>,
    },
    /// Repeats of one girth that lie more than 2 cm apart.
    Repeats {
        /// Which mark.
        place: MarkPlace,
        /// The smallest of them.
        least: Girth,
        /// The largest of them.
        most: Girth,
    },
    /// One mark moved otherwise than the others since the last visit.
    SinceVisit {
        /// The mark; both where only two are shared.
        moved: Vec<SinceVisit>,
        /// Nearest first.
        misreadings: Vec<Misreading>,
    },
    /// The affected limb is thinner than the other one: are the sides exchanged?
    Thinner {
        /// Mean of ln(affected / other) over the shared marks.
        mean_log: f64,
        /// How many marks are shared.
        shared: usize,
    },
    /// The limb that is fitted is not the affected one.
    NotAffected {
        /// The side that is fitted.
        fitted: Side,
        /// What the record calls affected.
        affected: Affected,
    },
    /// A stated length differs from the positions by more than 1 cm.
    Length {
        /// Which length.
        name: LengthName,
        /// As stated.
        stated: Span,
        /// By the positions of the marks.
        by_positions: Span,
    },
    /// Marks of one landmark stand more than 2 cm apart on both limbs.
    Positions {
        /// Each with its positions: on this limb, on the other one.
        apart: Vec<(Landmark, Position, Position)>,
    },
    /// A stated index and the quotient of its pressures lie more than 0.15 apart.
    Arterial {
        /// As stated.
        stated: f64,
        /// Ankle over brachial pressure.
        quotient: f64,
    },
    /// The client's label looks like a name.
    ClientLabel,
}

/// One question.
#[derive(Clone, Debug)]
pub struct Question {
    /// The limb it is about; none for the record as a whole.
    pub side: Option<Side>,
    /// Whether it is about the marks of `other_limb`, whose side this is.
    pub of_other: bool,
    /// What is asked.
    pub kind: QuestionKind,
}

impl Question {
    /// The words of `confirmed` that answer it, distal to proximal; empty where only a mended mark answers it
    /// (a serial mark has no word).
    pub fn words(&self) -> Vec<Confirmable> {
        match &self.kind {
            QuestionKind::Thinner { .. } => vec![Confirmable::Thinner],
            QuestionKind::NotAffected { .. } => vec![Confirmable::Affected],
            QuestionKind::Length { .. } => vec![Confirmable::Lengths],
            QuestionKind::Positions { .. } => vec![Confirmable::Positions],
            QuestionKind::Arterial { .. } => vec![Confirmable::Arterial],
            QuestionKind::ClientLabel => vec![Confirmable::Client],
            _ => self.landmarks().into_iter().map(Confirmable::Mark).collect(),
        }
    }

    /// The landmarks concerned, distal to proximal.
    pub fn landmarks(&self) -> Vec<Landmark> {
        let mut all: Vec<Landmark> = match &self.kind {
            QuestionKind::Unusual { unusual, .. } => unusual.iter().flat_map(Unusual::landmarks).collect(),
            QuestionKind::Repeats { place, .. } => place.landmark.into_iter().collect(),
            QuestionKind::SinceVisit { moved, .. } => {
                moved.iter().filter_map(|one| one.place.landmark).collect()
            }
            QuestionKind::Positions { apart } => apart.iter().map(|(landmark, _, _)| *landmark).collect(),
            QuestionKind::Thinner { .. }
            | QuestionKind::NotAffected { .. }
            | QuestionKind::Length { .. }
            | QuestionKind::Arterial { .. }
            | QuestionKind::ClientLabel => Vec::new(),
        };
        all.sort_unstable();
        all.dedup();
        all
    }

    /// The marks concerned, serial ones too, where single girths are asked about.
    pub fn places(&self) -> Vec<MarkPlace> {
        match &self.kind {
            QuestionKind::Unusual { unusual, .. } => unusual.iter().filter_map(Unusual::place).collect(),
            QuestionKind::Repeats { place, .. } => vec![*place],
            QuestionKind::SinceVisit { moved, .. } => moved.iter().map(|one| one.place).collect(),
            _ => Vec::new(),
        }
    }

    /// The misreadings that would explain it, nearest first.
    pub fn misreadings(&self) -> &[Misreading] {
        match &self.kind {
            QuestionKind::Unusual { misreadings, .. } | QuestionKind::SinceVisit { misreadings, .. } => {
                misreadings
            }
            _ => &[],
        }
    }

    /// The day of the earlier visit that it is held against.
    pub fn against(&self) -> Option<Date> {
        match &self.kind {
            QuestionKind::SinceVisit { moved, .. } => moved.first().map(|one| one.on),
            _ => None,
        }
    }
}
