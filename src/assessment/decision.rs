//! Owns the one decision of a report; every sentence about the outcome is derived from it.

use super::Outcome;
use crate::finding::Who;
use crate::rules::Urgency;

/// What the decision is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// The client, or one limb as such.
    Client {
        /// The limb, where it is one of two.
        limb: Option<usize>,
    },
    /// A chart on a limb, by their places.
    Chart {
        /// The limb.
        limb: usize,
        /// The chart within the limb.
        chart: usize,
    },
    /// A garment file of the run.
    Garment,
}

/// Who acts, and how soon: one matter's roles, or those of several that share them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Act {
    /// Any one of these.
    pub who: Vec<Who>,
    /// How soon.
    pub urgency: Urgency,
}

/// The decision.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Decision {
    /// The worst outcome that holds; none without charts and with nothing against a fitting.
    pub outcome: Option<Outcome>,
    /// The others that hold, worst first, never a trial fitting.
    pub also: Vec<Outcome>,
    /// How soon somebody has to act: the worst of every stop and clear-first finding that stands, whether it
    /// brought the outcome or not.
    pub urgency: Urgency,
    /// What it is about.
    pub subject: Subject,
    /// Why, in one sentence.
    pub reason: String,
    /// What to do next.
    pub next: String,
    /// Who acts: everyone of `acts`, each once.
    pub who: Vec<Who>,
    /// Who acts on which matter, most urgent first.
    pub acts: Vec<Act>,
    /// The findings that decided it, by their places in the assessment.
    pub findings: Vec<usize>,
}
