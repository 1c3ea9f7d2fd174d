//! Owns the report as a whole: names fixed by its schema, every key always there.

use serde::Serialize;

use super::{
    ChartBlock, CourseBlock, DecisionBlock, FindingRow, GradientBlock, PatternBlock, PressureBlock,
    RankedBlock, VolumeBlock,
};
use crate::anatomy::{Limb, Side};
use crate::assessment::Outcome;

/// The program that made the report.
#[derive(Clone, Debug, Serialize)]
pub struct Tool {
    /// `tapeline`.
    pub name: &'static str,
    /// Its version.
    pub version: &'static str,
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
    /// The decision.
    pub decision: DecisionBlock,
    /// The record.
    pub record: RecordBlock,
    /// The rules used.
    pub rules: RulesBlock,
    /// The screening.
    pub screening: ScreeningBlock,
    /// Arterial values.
    pub arterial: ArterialBlock,
    /// Allergies as written; null = not asked.
    pub allergies: Option<Vec<String>>,
    /// What was prescribed, as printed.
    pub prescribed: Option<String>,
    /// Findings, worst first; about the client, then about garments.
    pub findings: Vec<FindingRow>,
    /// One limb or two.
    pub limbs: Vec<LimbBlock>,
    /// The course over the visits; null without earlier visits.
    pub course: Option<CourseBlock>,
    /// The garment that was worked out for a wanted pressure.
    pub pattern: Option<PatternBlock>,
    /// Sentences that go with every report.
    pub limits: Vec<String>,
}

/// One limb.
#[derive(Clone, Debug, Serialize)]
pub struct LimbBlock {
    /// Arm or leg.
    pub limb: Limb,
    /// Left or right.
    pub side: Side,
    /// As printed: `left arm`.
    pub printed: String,
    /// Its outcome.
    pub outcome: Option<Outcome>,
    /// Every mark as measured, distal to proximal.
    pub marks: Vec<MeasuredBlock>,
    /// Lengths as stated or from the positions.
    pub lengths: Vec<LengthBlock>,
    /// The charts.
    pub charts: Vec<ChartBlock>,
    /// The charts in their order, part by part, the best first.
    pub ranking: Vec<RankedBlock>,
    /// Pressures.
    pub pressure: Vec<PressureBlock>,
    /// Falls.
    pub gradient: Vec<GradientBlock>,
    /// Volumes.
    pub volume: Option<VolumeBlock>,
    /// Needs that hang on no size, in sentences: hand or foot part, flat knit, reduce first.
    pub needs: Vec<String>,
    /// Whether hand or foot is swollen.
    pub hand_or_foot_swollen: Option<bool>,
    /// Whether flat knit is preferred (folds, distortion).
    pub flat_knit: bool,
}

/// A mark as measured.
#[derive(Clone, Debug, Serialize)]
pub struct MeasuredBlock {
    /// The landmark; null = a serial mark.
    pub landmark: Option<crate::anatomy::Landmark>,
    /// Where.
    pub at_cm: super::Figure,
    /// The girth.
    pub girth_cm: super::Figure,
    /// How many tape values.
    pub tapes: usize,
    /// The other limb's girth there.
    pub other_cm: Option<super::Figure>,
}

/// A length.
#[derive(Clone, Debug, Serialize)]
pub struct LengthBlock {
    /// `wrist to axilla`.
    pub name: String,
    /// How long.
    pub length_cm: super::Figure,
    /// Whether it was worked out from the positions.
    pub from_positions: bool,
}

/// The record.
#[derive(Clone, Debug, Serialize)]
pub struct RecordBlock {
    /// The clinic's reference.
    pub client: String,
    /// The day of measuring.
    pub measured_on: String,
    /// Who measured.
    pub measured_by: Option<String>,
    /// As printed: `left arm`, `both legs`.
    pub limb: String,
    /// Which side is affected, as written.
    pub affected: &'static str,
    /// `adult` or `child`.
    pub age_band: &'static str,
    /// The zero of positions.
    pub positions_from: &'static str,
    /// Posture while measuring.
    pub posture: Option<String>,
    /// What was shown to the client.
    pub shown: Vec<String>,
    /// Its file.
    pub file: String,
}

/// The rules used.
#[derive(Clone, Debug, Serialize)]
pub struct RulesBlock {
    /// Their id.
    pub id: String,
    /// As printed.
    pub name: String,
    /// What a rules file lowers, and why.
    pub lowered: Vec<String>,
    /// Where they state another error of the tape, on this limb.
    pub tape: Vec<String>,
}

/// The screening.
#[derive(Clone, Debug, Serialize)]
pub struct ScreeningBlock {
    /// How many questions are answered.
    pub answered: usize,
    /// Questions that are open, by id.
    pub unanswered: Vec<String>,
    /// Items present.
    pub present: Vec<PresentBlock>,
    /// Items and values cleared, by id.
    pub cleared: Vec<String>,
    /// When it was asked.
    pub asked_on: Option<String>,
    /// Who asked.
    pub by: Option<String>,
    /// The groups with their answers, for the annex.
    pub groups: Vec<GroupBlock>,
    /// The open questions in words.
    pub questions: Vec<QuestionBlock>,
    /// A block to paste into the record with every open question, where any is open.
    pub paste: Option<String>,
}

/// An item present.
#[derive(Clone, Debug, Serialize)]
pub struct PresentBlock {
    /// Its id.
    pub item: String,
    /// On which side; null = the client's.
    pub side: Option<Side>,
}

/// A group with its answers.
#[derive(Clone, Debug, Serialize)]
pub struct GroupBlock {
    /// As asked.
    pub group: String,
    /// The side, as printed; empty = the client's.
    pub side: String,
    /// When it was asked.
    pub asked_on: Option<String>,
    /// Present, in words.
    pub present: Vec<String>,
    /// How many absent.
    pub absent: usize,
    /// Unknown or unanswered, in words.
    pub open: Vec<String>,
}

/// An open question.
#[derive(Clone, Debug, Serialize)]
pub struct QuestionBlock {
    /// Its id.
    pub id: String,
    /// In words.
    pub question: String,
    /// On which side; null = the client's.
    pub side: Option<Side>,
}

/// Arterial values.
#[derive(Clone, Debug, Serialize)]
pub struct ArterialBlock {
    /// One for each leg with values.
    pub legs: Vec<LegBlock>,
}

/// The arterial values of one leg.
#[derive(Clone, Debug, Serialize)]
pub struct LegBlock {
    /// The limb, by its place in the report.
    pub limb: usize,
    /// When they were taken.
    pub taken_on: Option<String>,
    /// Each value as printed: `ABPI 1.04`.
    pub values: Vec<String>,
    /// The cap that holds, mmHg.
    pub cap_mmhg: Option<super::Figure>,
    /// What they come to, in words.
    pub words: String,
}
