//! Owns sizing: every size against every measure, the margins, the choice, the chance of the same
//! size again, and which charts are alternatives of one part.
//!
//! Does not drop a candidate silently, and estimates no pressure: the caller says which sizes a certain
//! rise takes out.
//!
//! Source: trade measuring rule after RAL (published): choose by ankle or wrist, then every other
//! girth must lie in that size; the choice by margins is a house rule.

mod limits;
mod input;
mod measure;
mod length;
mod size_fit;
mod judged;
mod choose;
mod points;
mod again;
mod parts;
mod weak;

pub use again::{SameAgain, same_again};
pub use choose::{ChartVerdict, Choice, Reason, choose, nearly};
pub use input::{KnownGirth, SizingInput};
pub use judged::{Sizing, Wanted, judge};
pub use length::LengthFit;
pub use limits::Limits;
pub use measure::{Direction, MeasureFit, MeasureVerdict};
pub use parts::parts;
pub use size_fit::{SizeFit, SizeVerdict};
pub use weak::{WIDE_SHARE, Weakness, is_wide, weaknesses};
