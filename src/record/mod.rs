//! Owns the measurement record: its content, its validation, the questions that unusual girths
//! raise and the probable slips behind them.
//!
//! Knows no garments.
//!
//! Source: plausible bands fitted to 507 adults (Heinz et al. 2003, J Stat Educ 11(2); house rule);
//! tape SD derived from Tánori-Tapia 2020, Healthcare 8:285.

mod mark;
mod prescribed;
mod arterial;
mod answers;
mod person;
mod content;
mod read_marks;
mod slip;
mod slips;
mod usual;
mod plausible;
mod previous;
mod read;

pub use answers::{Cleared, Observed, ScreeningBlock};
pub use arterial::{Arterial, Clinical};
pub use content::{Affected, AgeBand, Origin, Record, RecordSpots, VolumeMethod};
pub use mark::{Mark, TAPE_SD_CM};
pub use person::Reading;
pub use plausible::{Question, Unusual, WhichLimb, questions};
pub use prescribed::{Prescribed, Wanted};
pub use previous::{GirthChange, WeightChange, girth_changes, weight_change};
pub(crate) use read::limb_marks;
pub use read::read_record;
pub(crate) use read_marks::{landmark_fault, read_landmark};
pub use slip::{Slip, SlipKind};
