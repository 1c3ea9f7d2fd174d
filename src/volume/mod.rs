//! Owns limb volume from girths, the comparison of both limbs, its error and its severity sets.
//!
//! Knows no garments.
//!
//! Source: cut cones, Gohil 2018, Indian J Vasc Endovasc Surg 5:259 (published); discs, Royal
//! Marsden Manual, procedure 27.11 (published); hand and foot are left out (published).

mod limb_volume;
mod compare;

pub use compare::{Comparison, Part, compare};
pub use limb_volume::{LimbVolume, Station, disc, frustum};
