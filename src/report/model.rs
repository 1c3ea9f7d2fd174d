//! Owns the report as a whole.

use std::collections::BTreeMap;

use serde::Serialize;

use super::{Chart, GarmentBlock, Graduation, PatternBlock, Prescribed, Pressure, Record, Summary, Volume};

/// The program that made the report.
#[derive(Clone, Debug, Serialize)]
pub struct Tool {
    /// `tapeline`.
    pub name: &'static str,
    /// Its version.
    pub version: &'static str,
}

/// A finding.
#[derive(Clone, Debug, Serialize)]
pub struct Finding {
    /// Its id.
    pub id: String,
    /// `stop`, `review`, `care`, `note`.
    pub severity: &'static str,
    /// What it is about, in words.
    #[serde(rename = "where")]
    pub place: String,
    /// The chart's label.
    pub chart: Option<String>,
    /// The size's label.
    pub size: Option<String>,
    /// The landmark.
    pub landmark: Option<&'static str>,
    /// One sentence.
    pub message: String,
    /// What to do next.
    pub next: String,
    /// What the rule rests on.
    pub basis: &'static str,
    /// Where the rule was read.
    pub source: String,
    /// Whether someone named has cleared it.
    pub cleared: bool,
    /// Who, why and when.
    pub cleared_by: Option<ClearedBy>,
    /// The figures behind it.
    pub figures: BTreeMap<&'static str, f64>,
}

/// Who cleared a review.
#[derive(Clone, Debug, Serialize)]
pub struct ClearedBy {
    /// The role.
    pub role: String,
    /// The reason.
    pub reason: String,
    /// The date.
    pub on: String,
}

/// The screening.
#[derive(Clone, Debug, Serialize)]
pub struct Screening {
    /// Whether every question that applies is answered.
    pub answered: bool,
    /// Questions that are open, by id.
    pub unanswered: Vec<String>,
    /// Items answered yes.
    pub yes: Vec<String>,
    /// Items and arterial findings cleared.
    pub cleared: Vec<String>,
    /// When it was asked.
    pub asked_on: Option<String>,
    /// Who asked.
    pub by: Option<String>,
    /// The open questions in words, with their ids.
    pub questions: Vec<Question>,
    /// Where nothing is answered: a block for the record with every question that applies.
    pub template: Option<String>,
    /// Which set of rules was used.
    pub thresholds: String,
}

/// An open question.
#[derive(Clone, Debug, Serialize)]
pub struct Question {
    /// Its id.
    pub id: String,
    /// The question.
    pub question: String,
}

/// The report.
#[derive(Clone, Debug, Serialize)]
pub struct Report {
    /// `tapeline.report/1`.
    pub schema: &'static str,
    /// The program.
    pub tool: Tool,
    /// The day of the check.
    pub today: String,
    /// The outcome; null when no chart was given and nothing stands against a fitting.
    pub outcome: Option<&'static str>,
    /// Other outcomes that hold.
    pub also: Vec<&'static str>,
    /// The outcome in words.
    pub summary: Summary,
    /// The record.
    pub record: Record,
    /// What was prescribed.
    pub prescribed: Option<Prescribed>,
    /// Findings, worst first; about the client, then about garments.
    pub findings: Vec<Finding>,
    /// The screening.
    pub screening: Screening,
    /// The charts.
    pub charts: Vec<Chart>,
    /// Pressure along the limb.
    pub pressure: Vec<Pressure>,
    /// The fall along the limb.
    pub graduation: Vec<Graduation>,
    /// The one garment that was asked about.
    pub garment: Option<GarmentBlock>,
    /// The garment that was worked out for a wanted pressure.
    pub pattern: Option<PatternBlock>,
    /// Both limbs' volumes.
    pub volume: Option<Volume>,
    /// Sentences that go with every report.
    pub limits: Vec<String>,
}
