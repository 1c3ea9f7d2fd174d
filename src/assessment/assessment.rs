//! Owns everything worked out for one run, unrounded.

use super::{Decision, GarmentAssessment, LimbAssessment, Setting, WornGarment};
use crate::finding::Finding;
use crate::record::Record;
use crate::volume::{Course, Drift};

/// Everything worked out for one run.
#[derive(Clone, Debug)]
pub struct Assessment {
    /// Under what it was made.
    pub setting: Setting,
    /// The record that is judged.
    pub record: Record,
    /// The earlier visits, oldest first.
    pub earlier: Vec<Record>,
    /// One limb or two, as in the record.
    pub limbs: Vec<LimbAssessment>,
    /// Garment files of the run.
    pub garments: Vec<GarmentAssessment>,
    /// Every finding: about the client first, then about garments; worst first.
    pub findings: Vec<Finding>,
    /// The course over the visits; none without earlier ones and without garments in use.
    pub course: Option<Course>,
    /// Girths that have left the size worn, by limb.
    pub drift: Vec<(usize, Drift)>,
    /// What the garments in use press by today's girths.
    pub worn: Vec<WornGarment>,
    /// The one decision.
    pub decision: Decision,
}
