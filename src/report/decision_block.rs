//! Owns the decision as the report holds it.

use serde::Serialize;

use crate::assessment::Outcome;
use crate::finding::Who;
use crate::rules::Urgency;

/// The decision.
#[derive(Clone, Debug, Serialize)]
pub struct DecisionBlock {
    /// The outcome; null when no chart was given and nothing stands against a fitting.
    pub outcome: Option<Outcome>,
    /// Other outcomes that hold.
    pub also: Vec<Outcome>,
    /// How soon somebody has to act.
    pub urgency: Urgency,
    /// What it is about.
    pub subject: SubjectBlock,
    /// Why, in one sentence.
    pub reason: String,
    /// What to do next.
    pub next: String,
    /// Who acts.
    pub who: Vec<Who>,
    /// The day by which somebody acts on what is due soon; null where nothing is.
    pub by: Option<String>,
    /// The findings that decided it, by their places.
    pub findings: Vec<usize>,
}

/// What the decision is about.
#[derive(Clone, Debug, Serialize)]
pub struct SubjectBlock {
    /// `client`, `chart` or `garment`.
    pub kind: &'static str,
    /// The limb, by its place.
    pub limb: Option<usize>,
    /// The chart, by its place within the limb.
    pub chart: Option<usize>,
    /// In words.
    pub name: String,
}
