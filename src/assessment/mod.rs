//! Owns the whole check: it calls the rooms above in order and makes the one decision: outcome, what
//! it concerns, urgency, next step, who acts.
//!
//! Neither rounds nor formats.

mod outcome;
mod decision;
mod standing;
mod chart_outcomes;
mod weigh;
mod setting;
mod wanted;
mod readings_named;
mod open;
mod clearings;
mod context;
mod materials;
mod fall_gap;
mod held_findings;
mod reading_findings;
mod measured_size;
mod size_findings;
mod chart_assessment;
mod chart_findings;
mod chart;
mod without_record;
mod garment_assessment;
mod record_findings;
mod arterial_findings;
mod consistency_findings;
mod clearings_not_counted;
mod client_findings;
mod course_findings;
mod worn;
mod worn_findings;
mod worn_harm;
mod set_findings;
mod limb_assessment;
#[expect(clippy::module_inception, reason = "the room's one result bears the room's name")]
mod assessment;
mod followed;
mod assess;
mod one_garment;
mod own_readings;
mod made;

pub use arterial_findings::value_words;
pub use assess::assess;
pub use assessment::Assessment;
pub use chart_assessment::{ChartAssessment, ShownSize};
pub use chart_findings::misses;
pub use chart_outcomes::{ChartFacts, ChartOutcomes, LimbOutcomes, counted, ranking};
pub use clearings::Clearings;
pub use client_findings::question_name;
pub use context::LimbContext;
pub use course_findings::{
    change_words, due_words, part_name, protocol_words, ready_way, ready_words, wear_words,
};
pub use decision::{Act, Decision, Subject};
pub use fall_gap::{Asked, FallGap, decide_words, fall_gap};
pub use followed::followed;
pub use garment_assessment::{GarmentAssessment, assess_garment};
pub use limb_assessment::LimbAssessment;
pub use made::{NoPatternHere, PatternAsked, PatternAssessment, assess_pattern};
pub use one_garment::{AskedGarment, NoGarment, assess_one};
pub use open::{Opened, Read, open_files, open_record};
pub use outcome::Outcome;
pub use own_readings::read_and_estimated;
pub use reading_findings::contradiction;
pub use setting::Setting;
pub use size_findings::{class_place, ends, fall_words, usual_exponents};
pub use standing::{Rank, Standing};
pub use wanted::{PrescribedHere, WantedPressure, claim_printed, claimed_band, class_printed};
pub use weigh::limb_outcome;
pub use without_record::{SizeAlone, of_size_alone};
pub use worn::{Held, NotHeld, WornGarment, WornPressure, WornState};
pub use worn_findings::{worn_notes, worn_words};
