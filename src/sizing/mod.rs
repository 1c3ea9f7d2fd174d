//! Owns sizing: every size against every measure, the room left, the choice.
//!
//! Does not drop a candidate silently, and estimates no pressure.
//!
//! Source: trade measuring rule after RAL (published): choose by ankle or wrist, then every other
//! girth must lie in that size.

mod fit;
mod judge;
mod choose;

pub use choose::{ChartVerdict, Choice, Reason, choose};
pub use fit::{Direction, LengthFit, MeasureFit, MeasureVerdict, SizeFit, SizeVerdict, Sizing};
pub use judge::judge;
