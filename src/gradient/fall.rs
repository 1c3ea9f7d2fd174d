//! Owns the judgement of one fall.

use super::{Chances, Grade, GradientBasis};
use crate::anatomy::Landmark;

/// A mark against the one below it, in figures.
#[derive(Clone, Copy, Debug)]
pub struct Pair {
    /// The distal mark.
    pub distal: Landmark,
    /// The proximal mark.
    pub proximal: Landmark,
    /// How much more presses at the proximal one, mmHg; none by stretch.
    pub rise_mmhg: Option<f64>,
    /// Its SD, mmHg; none by stretch.
    pub sd_mmhg: Option<f64>,
}

/// How the pressure falls along the limb.
#[expect(clippy::struct_excessive_bools, reason = "each is a fact of its own about one judgement")]
#[derive(Clone, Debug)]
pub struct Fall {
    /// What the figures rest on.
    pub basis: GradientBasis,
    /// What the grade rests on: the basis, or by stretch alone where that is worse beyond a curve's end.
    pub decided_by: GradientBasis,
    /// The grade.
    pub grade: Grade,
    /// The grade of the estimated marks alone, before any bound.
    pub grade_of_estimated: Grade,
    /// Whether the grade rests on a lower bound beyond a curve's end.
    pub by_bound: bool,
    /// Whether the whole garment is judged: reference, a mark between and the top, all estimated.
    pub judged: bool,
    /// Whether a certain rise takes the size out.
    pub removes: bool,
    /// Whether a strip pull may end otherwise than in a rise; worked out for `likely` by stretch only.
    pub pull_may_change: bool,
    /// The chances of the estimated marks; none with fewer than two.
    pub chances: Option<Chances>,
    /// The chance that the grade rests on: R of the estimated marks, or, by a bound, the least chance of that one
    /// rise, which is no R.
    pub chance: Option<f64>,
    /// The mark to look at.
    pub place: Option<Landmark>,
    /// The mark that it is held against.
    pub against: Option<Landmark>,
    /// Each estimated mark against the one below it.
    pub pairs: Vec<Pair>,
    /// Landmarks beyond a curve's end.
    pub left_out: Vec<Landmark>,
    /// Landmarks that are estimated, distal first.
    pub estimated: Vec<Landmark>,
}
