//! Owns every place of a size that takes more than a given weight.

use super::grid::{Grid, Region};
use super::narrowed::Narrower;
use super::spot::Spot;

/// Places found.
pub(super) struct Rivals {
    /// The places.
    pub(super) spots: Vec<Spot>,
    /// Whether they are all.
    pub(super) whole: bool,
}

/// Every place with more weight than `floor`, at most `most`; of two where one takes all that the other does, the
/// one is enough (derived).
pub(super) fn rivals(grid: &Grid, weights: &[i64], floor: i64, most: usize, work: &mut u64) -> Rivals {
    let mut narrower = Narrower::of(grid, weights, true);
    let mut found = Rivals { spots: Vec::new(), whole: true };
    let mut stack: Vec<Region> = vec![grid.whole()];
    while let Some(mut region) = stack.pop() {
        if found.spots.len() >= most || narrower.spent >= *work {
            found.whole = false;
            break;
        }
        if narrower.narrow(&mut region, floor).is_none() {
            continue;
        }
        let free = region.iter().enumerate().filter(|(_, (first, last))| first < last);
        let Some((measure, (first, last))) = free.min_by_key(|(_, (first, last))| last - first) else {
            found.spots.push(Spot::of(grid, region.iter().map(|(first, _)| *first).collect()));
            continue;
        };
        for low in narrower.steps(&region, measure, (*first, *last)).into_iter().rev() {
            let mut one = region.clone();
            if let Some(slot) = one.get_mut(measure) {
                *slot = (low, low);
            }
            stack.push(one);
        }
    }
    *work = work.saturating_sub(narrower.spent);
    found
}
