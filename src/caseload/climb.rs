//! Owns the quick search for a place of a size that takes much: from a start, one measure after the other is slid to
//! where it takes most.

use super::grid::{Grid, Region, bits};

/// Most rounds over the measures (house rule: most climbs stand still after three).
const ROUNDS: usize = 12;

/// The place that a climb from `start` ends at, and the weight that it takes; points of weight 0 do not count.
pub(super) fn climb(
    grid: &Grid,
    weights: &[i64],
    among: &[u64],
    start: &[usize],
    work: &mut u64,
) -> (i64, Vec<usize>) {
    let mut region: Region = start.iter().map(|place| (*place, *place)).collect();
    let mut mask = Vec::with_capacity(among.len());
    let mut bins: Vec<i64> = Vec::new();
    let mut reached = -1;
    let mut still = 0;
    for turn in 0..ROUNDS * grid.axes().len() {
        let measure = turn % grid.axes().len();
        let Some(axis) = grid.axes().get(measure) else { break };
        mask.clear();
        mask.extend_from_slice(among);
        grid.keep(&region, Some(measure), &mut mask);
        bins.clear();
        bins.resize(axis.len(), 0);
        for point in bits(&mask) {
            *work = work.saturating_sub(2);
            let weight = weights.get(point).copied().unwrap_or_default();
            if let Some(bin) = grid.cells(point).get(measure).and_then(|cell| bins.get_mut(*cell)) {
                *bin += weight;
            }
        }
        *work = work.saturating_sub(u64::try_from(bins.len() + mask.len()).unwrap_or_default());
        let (mut weight, mut end, mut best) = (0, 0, None);
        let mut ahead = bins.iter();
        for (low, own) in bins.iter().enumerate() {
            let stop = axis.end(low);
            while end < stop {
                weight += ahead.next().copied().unwrap_or_default();
                end += 1;
            }
            if *own > 0 && best.is_none_or(|(most, _)| weight > most) {
                best = Some((weight, low));
            }
            weight -= own;
        }
        still += 1;
        if let Some((most, low)) = best
            && most > reached
            && let Some(slot) = region.get_mut(measure)
        {
            (*slot, reached, still) = ((low, low), most, 0);
        }
        if still >= grid.axes().len() {
            break;
        }
    }
    (reached.max(0), region.into_iter().map(|(place, _)| place).collect())
}
