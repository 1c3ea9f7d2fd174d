//! Owns a finding as the report holds it.

use serde::Serialize;

use crate::anatomy::Landmark;
use crate::finding::Who;
use crate::rules::{Basis, Severity, Urgency};

/// A finding.
#[derive(Clone, Debug, Serialize)]
pub struct FindingRow {
    /// Its id.
    pub id: String,
    /// How much it weighs.
    pub severity: Severity,
    /// How soon somebody has to act.
    pub urgency: Urgency,
    /// What it is about, in words: the client, a limb, or a chart by its label.
    #[serde(rename = "where")]
    pub place: String,
    /// The limb, by its place.
    pub limb: Option<usize>,
    /// The chart, by its place within the limb.
    pub chart: Option<usize>,
    /// The size, by its place in the chart.
    pub size: Option<usize>,
    /// The landmark.
    pub landmark: Option<Landmark>,
    /// Its name on paper.
    pub title: String,
    /// One or two sentences.
    pub message: String,
    /// What to do next.
    pub next: String,
    /// Who acts.
    pub who: Vec<Who>,
    /// What the rule rests on.
    pub basis: Basis,
    /// Where the rule was read.
    pub source: String,
    /// Whether someone who may has cleared it.
    pub cleared: bool,
    /// Whether someone who may has refused it.
    pub refused: bool,
    /// Who decided, why and when.
    pub decided_by: Option<DecidedBy>,
    /// The word of `confirmed` that answers it.
    pub confirm: Option<String>,
    /// Whether it holds the report up until answered.
    pub open: bool,
}

/// Who decided on a finding.
#[derive(Clone, Debug, Serialize)]
pub struct DecidedBy {
    /// The role.
    pub role: Who,
    /// Why.
    pub reason: String,
    /// When.
    pub on: String,
    /// Until when.
    pub until: Option<String>,
    /// By which protocol.
    pub protocol: Option<String>,
}
