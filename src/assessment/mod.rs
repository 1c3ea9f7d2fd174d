//! Owns the order in which the other rooms are called, and the outcome.
//!
//! Rounds and formats nothing.
//!
//! Source: outcomes and their order are house rules; see `outcome`.

mod outcome;
mod raise;
mod open;
mod worn;
mod garment_findings;
mod chart;
mod limb_findings;
mod client_findings;
mod assess;

pub use assess::{Assessment, assess};
pub use chart::ChartAssessment;
pub use open::{OpenRecord, open_previous, open_record};
pub use outcome::Outcome;
pub use worn::{MarkEstimate, ReferenceEstimate, Worn, WornEstimate, estimate_worn};
