//! Owns Laplace and nothing else: from stretch over tension to pressure, and its uncertainty.
//!
//! Holds no thresholds.
//!
//! Source: P = 2πT/C (derived: a cylinder under even tension; exact as the arc-length mean over any
//! convex section).

mod estimate;
mod law;

pub(crate) use estimate::stretch;
pub use estimate::{Estimate, Pressed, Spread, estimate};
pub use law::{laplace, overlap_layers};
