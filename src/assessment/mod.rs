//! Owns the order in which the other rooms are called, and the outcome.
//!
//! Rounds and formats nothing.
//!
//! Source: outcomes and their order are house rules; see `outcome`.

mod outcome;
mod raise;
mod open;
mod worn;
mod outfit;
mod garment_findings;
mod chart;
mod limb_findings;
mod client_findings;
mod assess;
mod readings;
mod profile;
mod edge;
mod gradient_findings;
mod gradient;
mod pattern;

pub use assess::{Assessment, assess};
pub use chart::ChartAssessment;
pub use edge::{EdgeEstimate, EdgeRise, edges};
pub use gradient::{Asked, GradientAssessment, assess_gradient};
pub use open::{OpenRecord, open_previous, open_record};
pub use outcome::Outcome;
pub use outfit::estimate_outfit;
pub use pattern::{Fall, NoPattern, PatternAssessment, PatternMark, Target, Wanted, assess_pattern};
pub use profile::{ProfilePoint, Swelling, profile, swelling};
pub use readings::{Against, AgainstRow, Scale, against, estimate_readings};
pub use worn::{MarkEstimate, PieceAt, ReadAt, ReferenceEstimate, Worn, WornEstimate, estimate_worn};
