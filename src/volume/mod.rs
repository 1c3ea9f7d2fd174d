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
mod graded;
mod visit_volume;
mod measure;

pub use detectable::{Detectable, Setting, TWO_SIDED};
pub use excess::Excess;
pub use girth_pair::GirthPair;
pub use graded::{CutOffGrade, CutOffs, Graded};
pub use limb_volume::{LimbVolume, disc, frustum, volume_of};
pub use measure::measure;
pub use numbers::VolumeNumbers;
pub use part::{Part, PartOfLimb};
pub use place::Place;
pub use segment::Segment;
pub use station::Station;
pub use visit_volume::{Uncompared, VisitVolume};
