//! Owns the record of a visit: its content, its validation, the visits of one client, the questions
//! that unusual girths raise and the probable misreadings behind them.
//!
//! Knows no garments.
//!
//! Source: plausible bands fitted to 507 adults (Heinz et al. 2003, J Stat Educ 11(2); house rule);
//! tape SD derived from Tánori-Tapia 2020, Healthcare 8:285.

mod mark;
mod prescribed;
mod arterial;
mod answers;
mod cause;
mod reading;
mod garment_in_use;
mod limb_record;
mod content;
mod confirmable;
mod read_marks;
mod read_pressure;
mod read_arterial;
mod read_answers;
mod read_use;
mod read_limb;
mod read;
mod visit_heading;
mod visit_row;
mod visit_table;
mod visits;
mod mark_place;
mod girths;
mod neighbours;
mod unusual;
mod usual;
mod since_visit;
mod misreading;
mod misreadings;
mod falls;
mod question;
mod consistency;
mod questions;

pub use answers::{ByProtocol, ClearDecision, Cleared, Observed, Pitting, Screening};
pub use arterial::{Arterial, Cap, Clinical, Index};
pub use cause::Cause;
pub use confirmable::Confirmable;
pub use consistency::{looks_like_a_name, mean_log_excess};
pub use content::{Affected, AgeBand, Allergies, Origin, Record, RecordSpots, VolumeMethod};
pub use falls::{Fall, falls};
pub use garment_in_use::GarmentInUse;
pub use limb_record::{LengthName, LimbRecord};
pub use mark::Mark;
pub use mark_place::MarkPlace;
pub use misreading::{Misreading, MisreadingKind};
pub use misreadings::MOST_MISREADINGS;
pub use neighbours::BesideNeighbours;
pub use prescribed::{Prescribed, Wanted};
pub use question::{Question, QuestionKind};
pub use questions::questions;
pub use read::read_record;
pub(crate) use read_marks::{landmark_fault, read_landmark};
pub use reading::{Reading, SensorSide};
pub use since_visit::SinceVisit;
pub use unusual::{Unusual, usual_girth};
pub use visit_table::{is_visit_table, read_visit_table};
pub use visits::{VisitFault, Visits, arrange_visits, read_visits};
