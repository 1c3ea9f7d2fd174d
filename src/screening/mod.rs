//! Owns contraindications and cautions from the record: which questions apply, what was answered,
//! what is not answered, arterial values, and who has cleared what.
//!
//! Never overrides a stop; an unknown answer is never a pass.
//!
//! Source: the items and limits of the rules, each with its own basis; in the default set mainly
//! Rabe 2020, Phlebology 35:447.

mod settle;
mod arterial;

pub use arterial::{ArterialHit, NoAbpi, arterial_hits, no_abpi};
pub use settle::{ALLERGY_ITEM, Answer, Screened, settle};
