//! Owns Laplace and nothing else: from stretch over tension to pressure, and its uncertainty.
//!
//! Holds no thresholds.
//!
//! Source: P = 2πT/C (derived: a cylinder under even tension; exact as the arc-length mean over any
//! convex section).

mod law;
mod estimate;
mod wrap;
mod section;
mod inverse;
mod stack;
mod wear;

pub use estimate::{Estimate, Pressed, Spread, estimate, estimate_cm, stretch};
pub use inverse::{Relaxed, reduction_from_stretch, relaxed_for, stretch_from_reduction};
pub use law::{laplace, laplace_cm, overlap_layers, tension_for};
pub use section::{Ellipse, cone_share, radius_from_chord};
pub use stack::{Stacked, stack};
pub use wear::{Line, PUBLISHED_WEAR, PublishedWear};
pub use wrap::{WrapPull, estimate_wrap};
