//! Owns the one estimate of what is worn on a limb, a garment or several pieces together: the pressure at
//! every mark with both its ranges, the reference and its class, the fall along the limb, residual
//! pressures, the top edge, and what a sensor read against all that.
//!
//! A chart's size is a garment and goes the same way. Holds no words for people and raises no finding.
//!
//! Source: Laplace (room `pressure`), the rule of the fall (room `gradient`); the shares of a sum that are
//! felt and the spread between wearers are published and stand in the rules.

mod rules;
mod on_limb;
mod knits;
mod lying;
mod mark;
mod reference;
mod residual;
mod unheld;
mod falls;
mod readings;
mod top_edge;
mod profile;
mod chi_square;
mod calibration;
mod estimated;
mod pattern_target;
mod pattern;

pub use calibration::{Calibration, LEAST_READINGS, NoCalibration, WornSpread, calibrate, worn_spread};
pub use chi_square::chi_square_above;
pub use estimated::{Estimated, estimate, estimate_garment, is_taken_out, turning, what_decides};
pub use falls::{FallOf, FallVerdict};
pub use mark::{MarkEstimate, PieceAt, Range};
pub use on_limb::OnLimb;
pub use pattern::{NoPattern, Pattern, PatternMark, Wanted, pattern};
pub use pattern_target::{Target, WantedFall};
pub use profile::{ProfilePoint, Swelling, profile, swelling};
pub use readings::{AgainstReading, ReadAt, ReadingsVerdict};
pub use reference::ReferenceEstimate;
pub use residual::Residual;
pub use rules::EstimateRules;
pub use top_edge::TopEdgeEstimate;
pub use unheld::Unheld;
