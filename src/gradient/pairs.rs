//! Owns the comparison of every mark with every mark below it.

use super::rise::pair;
use super::state::State;
use super::{FallSetting, GradientBasis};

/// Two marks of the estimated ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Two {
    /// The distal one.
    pub distal: usize,
    /// The proximal one.
    pub proximal: usize,
}

/// What all pairs say.
#[derive(Clone, Copy, Debug)]
pub(super) struct Pairs {
    /// Highest chance of any rise: by stretch the lowest over the band, else the average.
    pub any_rise: f64,
    /// Where that is.
    pub any_place: Option<Two>,
    /// Highest average chance of a rise that counts.
    pub counted: f64,
    /// Where that is.
    pub counted_place: Option<Two>,
    /// Sum over the pairs of the average chance of a rise that counts: no chance of a rise somewhere
    /// is above it (derived).
    pub sum: f64,
}

/// Holds every mark against every one below it.
pub(super) fn pairs(state: &State<'_>, setting: &FallSetting<'_>) -> Pairs {
    let delta = setting.delta();
    let count = state.estimated.len();
    let mut found = Pairs { any_rise: 0.0, any_place: None, counted: 0.0, counted_place: None, sum: 0.0 };
    // Ties go to the lowest proximal mark, then the lowest distal one.
    for proximal in 1..count {
        for distal in 0..proximal {
            let (mut mean, mut lowest, mut counted) = (0.0, f64::INFINITY, 0.0);
            for node in &state.nodes {
                let (Some(below), Some(above)) = (node.points.get(distal), node.points.get(proximal)) else {
                    continue;
                };
                let any = pair(*below, *above, 0.0);
                lowest = any.min(lowest);
                if node.weight > 0.0 {
                    mean += node.weight * any;
                    counted += node.weight * pair(*below, *above, delta);
                }
            }
            let any = if setting.basis == GradientBasis::Stretch { lowest } else { mean };
            let two = Two { distal, proximal };
            if found.any_place.is_none() || any > found.any_rise {
                (found.any_rise, found.any_place) = (any, Some(two));
            }
            if found.counted_place.is_none() || counted > found.counted {
                (found.counted, found.counted_place) = (counted, Some(two));
            }
            found.sum += counted;
        }
    }
    found
}
