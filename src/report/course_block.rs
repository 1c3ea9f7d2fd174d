//! Owns the course over the visits as the report holds it.

use serde::Serialize;

use super::Figure;
use crate::anatomy::Landmark;
use crate::words;

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
    /// What the garments in use press by today's girths.
    pub worn: Vec<WornBlock>,
    /// Infections in the last twelve months.
    pub infections: usize,
    /// What holds beside, in sentences, each of its limb where there are two.
    pub notes: Vec<String>,
    /// How a sentence of each limb begins where there are two: `Left leg: `.
    #[serde(skip)]
    pub(super) whose: Vec<String>,
}

impl CourseBlock {
    /// All that is said of the course, in sentences, in the order of the report; what holds of both limbs is said once.
    pub fn said(&self) -> Vec<String> {
        let mut all: Vec<(usize, String)> =
            self.changes.iter().map(|one| (one.limb, one.words.clone())).collect();
        all.extend(self.ready.iter().map(|one| {
            let decide = one.decide.as_ref().map(|decide| format!(" {decide}")).unwrap_or_default();
            (one.limb, format!("{}{decide}", one.words))
        }));
        all.extend(self.notes.iter().map(|note| {
            let own = |begins: &String| Some(note.strip_prefix(begins.as_str())?.to_owned());
            let found = self.whose.iter().enumerate().find_map(|(limb, begins)| Some((limb, own(begins)?)));
            found.unwrap_or_else(|| (0, note.clone()))
        }));
        all.extend(self.worn.iter().flat_map(|one| {
            std::iter::once(&one.words).chain(&one.notes).map(move |words| (one.limb, words.clone()))
        }));
        all.extend(self.due.iter().map(|one| {
            let latest = one.by.as_ref().map(|by| format!(", at the latest {by}")).unwrap_or_default();
            let late = if one.late { "; overdue" } else { "" };
            (one.limb, format!("{}: {}{latest}{late} ({})", words::capital(&one.what), one.on, one.basis))
        }));
        let of_both = |said: &str| {
            let limbs = 0..self.whose.len();
            self.whose.len() > 1
                && limbs.into_iter().all(|limb| all.iter().any(|one| one.0 == limb && one.1 == said))
        };
        let mut told: Vec<String> = Vec::new();
        for (limb, said) in &all {
            let both = of_both(said);
            let line = if both { said.clone() } else { format!("{}{said}", self.whose(*limb)) };
            if !both || !told.contains(&line) {
                told.push(line);
            }
        }
        told
    }

    /// How a sentence of a limb begins; empty where there is one limb.
    pub(super) fn whose(&self, limb: usize) -> &str {
        self.whose.get(limb).map(String::as_str).unwrap_or_default()
    }
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
    /// What is judged and said: `excess` where the other limb was measured at both visits, else `volume`.
    pub what: &'static str,
    /// Since.
    pub from: String,
    /// To.
    pub to: String,
    /// The limb, by its place in the report.
    pub limb: usize,
    /// The change of the limb's own volume, %.
    pub change_percent: Option<Figure>,
    /// What of that could be told, %.
    pub detectable_percent: Option<Figure>,
    /// Whether it is more than that.
    pub beyond: Option<bool>,
    /// The change of the excess, mL; null where it is not judged.
    pub excess_change_ml: Option<Figure>,
    /// What of that could be told, mL.
    pub excess_detectable_ml: Option<Figure>,
    /// Whether it is more than that.
    pub excess_beyond: Option<bool>,
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
    /// The limb, by its place in the report.
    pub limb: usize,
    /// `first-look`, `re-check`, `regular-visit`, `re-measure`, `renewal`.
    pub kind: &'static str,
    /// What.
    pub what: String,
    /// When.
    pub on: String,
    /// By which day at the latest; null where that is the same day.
    pub by: Option<String>,
    /// Whether its last day has passed.
    pub late: bool,
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

/// What a garment in use presses by today's girths, at the mark where its class is judged.
#[derive(Clone, Debug, Serialize)]
pub struct WornBlock {
    /// The limb, by its place in the report.
    pub limb: usize,
    /// Which garment.
    pub garment: String,
    /// `in-class`, `cannot-tell`, `too-low`, `too-high`; null = not worked out.
    pub state: Option<&'static str>,
    /// Where the class is judged.
    pub landmark: Option<Landmark>,
    /// The class as printed.
    pub class: Option<String>,
    /// The visit at which it was fitted.
    pub then_on: Option<String>,
    /// By the girths of that visit.
    pub then_mmhg: Option<Figure>,
    /// By today's girths; null beyond the tested stretch.
    pub now_mmhg: Option<Figure>,
    /// The least that it can be beyond the tested stretch.
    pub now_bound: Option<Figure>,
    /// Low end of its 95 % range.
    pub low_mmhg: Option<Figure>,
    /// High end.
    pub high_mmhg: Option<Figure>,
    /// The chance of the class by today's girths.
    pub chance: Option<Figure>,
    /// In words.
    pub words: String,
    /// What is known of its wear, and whether it can be ordered again.
    pub notes: Vec<String>,
}
