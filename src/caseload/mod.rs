//! Owns a whole caseload at once: a table of limbs against size charts, row by row in constant memory;
//! which sizes serve it, and which to stock.
//!
//! Judges by the rooms above alone: its compact form of sizing is held equal to theirs by a property test.
//!
//! Source: the rules of sizing, of the estimate and of the fall.

mod nominal;
mod number;
mod limb_columns;
mod case;
mod usual;
mod lanes;
mod knit;
mod sized;
mod prepared;
mod field;
mod form;
mod ids;
mod noted;
mod batch;
mod stream;
mod coverage;
mod cover;
mod grid;
mod narrowed;
mod ceiling;
mod spot;
mod climb;
mod rivals;
mod placing;
mod price;
mod bound;
mod outbid;
mod relaxed_sizes;
mod design;

pub use batch::{Batch, BlockDone, Worker};
pub use case::Case;
pub use cover::{Covered, Girths, cover, girths};
pub use coverage::{Coverage, Missed, SizeOf, Stocked, sizes};
pub use design::{Designed, design};
pub use field::{FIELD_NAMES, Field};
pub use form::BatchForm;
pub use ids::REMEMBERED;
pub use limb_columns::LimbColumns;
pub use nominal::{nominal, nominal_cm};
pub use prepared::{CasePressure, Prepared, Scratch};
pub use relaxed_sizes::{NoRelaxed, USUAL_FALL, relaxed_girths};
pub use sized::Sized;
pub use stream::{BatchEnd, run_batch};
