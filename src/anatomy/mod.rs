//! Owns limbs, sides, landmarks with their letters, the order from distal to proximal, the
//! reference and the joint of each limb.
//!
//! Does not hold a client's numbers.
//!
//! Source: measuring points and letters of the published garment standards (leg: published; arm:
//! common trade use, memory).

mod limb;
mod landmark;
mod heading;
mod meant;
mod stretch_of_limb;

pub use landmark::Landmark;
pub use limb::{Limb, Side};
pub use meant::meant;
pub use stretch_of_limb::Between;
