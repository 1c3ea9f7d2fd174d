//! Owns rings: a mark that presses more than both its neighbours.

use super::judge::{judged_points, pair};
use super::{Grade, Point};
use crate::anatomy::Landmark;
use crate::rules::Rules;

/// A mark that is certainly above both its neighbours.
#[derive(Clone, Copy, Debug)]
pub struct Ring {
    /// The neighbour nearer hand or foot.
    pub distal: Landmark,
    /// The mark itself.
    pub at: Landmark,
    /// The neighbour nearer the trunk.
    pub proximal: Landmark,
    /// How much it lies above the higher neighbour, mmHg; none by stretch alone.
    pub above: Option<f64>,
}

/// Every judged mark that is certainly above the judged marks on both sides.
pub fn rings(points: &[Point], rules: &Rules) -> Vec<Ring> {
    let judged = judged_points(points);
    judged
        .windows(3)
        .filter_map(|three| {
            let [distal, middle, proximal] = three else { return None };
            let up = pair(distal, middle, false, rules);
            // The comparison turned round: the chance that the middle is above the one beyond it.
            let down = pair(proximal, middle, false, rules);
            let certain = up.grade == Some(Grade::Certain) && down.grade == Some(Grade::Certain);
            let above = up.rise.zip(down.rise).map(|(one, other)| one.min(other));
            certain.then_some(Ring {
                distal: distal.landmark,
                at: middle.landmark,
                proximal: proximal.landmark,
                above,
            })
        })
        .collect()
}
