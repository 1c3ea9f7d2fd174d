//! Owns limb volume from girths, the comparison of both limbs, its error and its grades, and the
//! course over visits: what changed, whether a limb has settled, what is due.
//!
//! Says no sentences; knows no pressure and no garment beyond the range of a size.
//!
//! Source: cut cones, Gohil 2018, Indian J Vasc Endovasc Surg 5:259 (published); discs, Royal
//! Marsden Manual, procedure 27.11 (published); hand and foot are left out (published); follow-up,
//! Lymphoedema Framework 2006 (published); readiness and worsening are house rules.

mod numbers;
mod station;
mod limb_volume;
mod place;
mod row;
mod detectable;
mod excess;
mod part;
mod segment;
mod girth_pair;
mod girth_since;
mod graded;
mod visit_volume;
mod measure;
mod protocol_change;
mod seen;
mod change;
mod relative;
mod line;
mod ready;
mod visit;
mod pairs;
mod worsening;
mod due;
mod drift;
mod infections;
mod weight_change;
mod limb_course;
mod course;
mod follow;

pub use change::{Change, ExcessChange, NoExcess, Since, VolumeChange};
pub use course::Course;
pub use detectable::{Detectable, Setting, TWO_SIDED};
pub use drift::{Drift, drift};
pub use due::{Due, DueKind, Wear, current, due, months_after};
pub use excess::Excess;
pub use follow::course;
pub use girth_pair::GirthPair;
pub use girth_since::GirthSince;
pub use graded::{CutOffGrade, CutOffs, Graded};
pub use infections::Infections;
pub use limb_course::LimbCourse;
pub use limb_volume::{LimbVolume, disc, frustum, volume_of};
pub use line::{Line, ONE_SIDED, Point};
pub use measure::measure;
pub use numbers::VolumeNumbers;
pub use part::{Part, PartOfLimb};
pub use place::Place;
pub use protocol_change::ProtocolChange;
pub use ready::{Decide, Further, Ready, ReadyState, recent, recent_line, state_of};
pub use relative::RelativeChange;
pub use segment::Segment;
pub use station::Station;
pub use visit::{Compared, Visit};
pub use visit_volume::{Uncompared, VisitVolume};
pub use weight_change::WeightChange;
pub use worsening::{Grown, Worsening, worse_limit_percent};
