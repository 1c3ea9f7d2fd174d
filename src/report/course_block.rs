//! Owns the course over the visits as the report holds it.

use serde::Serialize;

use super::Figure;
use crate::anatomy::Landmark;

/// The course over the visits.
#[derive(Clone, Debug, Serialize)]
pub struct CourseBlock {
    /// Every visit and limb, oldest first.
    pub visits: Vec<VisitBlock>,
    /// Changes since the first and the last visit.
    pub changes: Vec<ChangeBlock>,
    /// Ready for a garment?
    pub ready: Vec<ReadyBlock>,
    /// What is due.
    pub due: Vec<DueBlock>,
    /// Girths that have left the size worn.
    pub drift: Vec<DriftBlock>,
    /// Infections in the last twelve months.
    pub infections: usize,
    /// What holds beside, in sentences.
    pub notes: Vec<String>,
}

/// One visit of one limb.
#[derive(Clone, Debug, Serialize)]
pub struct VisitBlock {
    /// The day.
    pub measured_on: String,
    /// Days since the first visit.
    pub day: i32,
    /// The limb, by its place in the report.
    pub limb: usize,
    /// Its volume.
    pub volume_ml: Option<Figure>,
    /// The other limb's.
    pub other_ml: Option<Figure>,
    /// Affected minus other.
    pub excess_ml: Option<Figure>,
    /// In % of the other.
    pub excess_percent: Option<Figure>,
    /// SD between visits.
    pub sd_ml: Option<Figure>,
    /// Its volume by the marks that every visit of its series shares: these stand beside one another.
    pub compared_ml: Option<Figure>,
    /// The other limb's.
    pub compared_other_ml: Option<Figure>,
    /// Affected minus other.
    pub compared_excess_ml: Option<Figure>,
    /// In % of the other.
    pub compared_excess_percent: Option<Figure>,
    /// Lower end of what another visit may give by measuring alone.
    pub unchanged_low_ml: Option<Figure>,
    /// Its upper end.
    pub unchanged_high_ml: Option<Figure>,
    /// Which series of like measurements.
    pub series: usize,
}

/// A change between two visits.
#[derive(Clone, Debug, Serialize)]
pub struct ChangeBlock {
    /// Which figure: `volume`, `excess`, …
    pub what: &'static str,
    /// Since.
    pub from: String,
    /// To.
    pub to: String,
    /// The limb, by its place in the report.
    pub limb: usize,
    /// The change, %.
    pub change_percent: Option<Figure>,
    /// What could be told, %.
    pub detectable_percent: Option<Figure>,
    /// Whether it is more than that.
    pub beyond: Option<bool>,
    /// In words.
    pub words: String,
}

/// Ready for a garment?
#[derive(Clone, Debug, Serialize)]
pub struct ReadyBlock {
    /// The limb, by its place in the report.
    pub limb: usize,
    /// `settled`, `not-yet`, `rising`, `cannot-tell`.
    pub state: &'static str,
    /// Loss of volume a week, %.
    pub loss_percent_a_week: Option<Figure>,
    /// Its one-sided bounds.
    pub low: Option<Figure>,
    /// Upper bound.
    pub high: Option<Figure>,
    /// How many visits it rests on.
    pub visits: usize,
    /// What would decide, in words.
    pub decide: Option<String>,
    /// In words.
    pub words: String,
}

/// Something due.
#[derive(Clone, Debug, Serialize)]
pub struct DueBlock {
    /// What.
    pub what: String,
    /// When.
    pub on: String,
    /// What the rule rests on.
    pub basis: &'static str,
}

/// A girth that has left the size worn.
#[derive(Clone, Debug, Serialize)]
pub struct DriftBlock {
    /// The limb, by its place in the report.
    pub limb: usize,
    /// Where.
    pub landmark: Landmark,
    /// Which garment.
    pub garment: String,
    /// By how much, positive above the range.
    pub by_cm: Figure,
}
