//! Owns the comparison of marks along the limb: rises by readings, by fabric or by stretch alone,
//! how certain each is, and the shares of the reference.
//!
//! Has no words for people.
//!
//! Source: any rise toward the trunk counts as a reversal (Best 2000, JBJS Br 82-B:116, published);
//! the grades of certainty and the distances are house rules.

mod grade;
mod point;
mod stretch_pair;
mod judge;
mod ratio;
mod ring;
mod exponent;

pub use exponent::{FallsWhen, Undecided, undecided};
pub use grade::{Grade, Verdict};
pub use judge::{Graduation, Pair, grade_rise, judge};
pub use point::{GraduationBasis, Point, Share, Shares, Value, unlike_fabrics_sd};
pub use ratio::{Ratio, ratios};
pub use ring::{Ring, rings};
