//! Owns the placing of K sizes of one shape so that they serve most of a caseload, with a bound on what any K could.

use std::collections::BTreeMap;

use super::bound::bring_down;
use super::ceiling::ceiling;
use super::grid::Grid;
use super::outbid::Outbid;
use super::placing::Placing;
use super::price::Prices;
use super::rivals::rivals;
use super::spot::{SCALE, Spot};

/// Steps that the search for something better may take, and each of its parts (house rule: about a second).
const WORK: u64 = 400_000_000;

/// Most places among which something better is sought (house rule).
const MOST_RIVALS: usize = 4000;

/// K sizes of one shape.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Designed {
    /// The low ends of each size, tenths of a millimetre, in the order of the measures.
    pub sizes: Vec<Vec<i64>>,
    /// Limbs that they serve together.
    pub served: usize,
    /// No K sizes of this shape serve more.
    pub bound: usize,
}

/// Places `count` sizes whose ranges are `widths` wide so that they serve most of `limbs` (a girth for each width,
/// tenths of a millimetre, closed ranges).
///
/// Any size can be moved up until each low end stands on a girth of a limb without losing one (derived), so those
/// places are enough. The sizes are placed one by one where climbs find that each adds most, then each is placed anew
/// while that helps; the bound is that of the linear relaxation as far as some rounds bring it down, and where little
/// is left between the two, every place that could still be part of something better is tried. What may be spent is
/// counted in steps, so the same limbs give the same sizes on every machine.
pub fn design(limbs: &[Vec<i64>], widths: &[i64], count: usize) -> Designed {
    let mut merged: BTreeMap<&Vec<i64>, i64> = BTreeMap::new();
    for limb in limbs {
        *merged.entry(limb).or_default() += 1;
    }
    let points: Vec<Vec<i64>> = merged.keys().map(|limb| (*limb).clone()).collect();
    let counts: Vec<i64> = merged.values().copied().collect();
    let grid = Grid::of(&points, widths);
    let mut placing = Placing::of(&grid, &counts);
    let mut chosen = placing.greedy(count);
    placing.improve(&mut chosen);
    let served = placing.served(&chosen);
    let (bound, prices) = bring_down(&grid, &counts, &mut placing, (count, served));
    if served < bound {
        // The places that settled the bound are the best to choose from.
        if let Some(better) = placing.among_known(&prices.rest, count, served) {
            chosen = better;
        }
        placing.improve(&mut chosen);
    }
    let served = placing.served(&chosen);
    let mut done = (served, bound.max(served));
    if served < bound
        && let Some((best, better)) = outbid(&grid, &counts, &prices, (count, served))
    {
        done = (best, best);
        chosen = better.unwrap_or(chosen);
    }
    let mut sizes: Vec<Vec<i64>> = chosen.iter().map(|spot| grid.lows(&spot.at)).collect();
    sizes.sort();
    let number = |count: i64| usize::try_from(count).unwrap_or_default();
    Designed { sizes, served: number(done.0), bound: number(done.1) }
}

/// The best of all where every place that could be part of something better can be tried: how many it serves,
/// and its places where they are others.
fn outbid(
    grid: &Grid,
    counts: &[i64],
    prices: &Prices,
    (count, served): (usize, i64),
) -> Option<(i64, Option<Vec<Spot>>)> {
    let mut work = WORK;
    // K sizes with this one serve at most the limbs' own worth, K − 1 times the most, and its own: it must take more
    // than what is missing.
    let most = ceiling(grid, &prices.rest, 0, &mut work).most;
    let others = i64::try_from(count).ok()?.saturating_sub(1);
    let floor = SCALE * (served + 1) - prices.alone(counts) - others.saturating_mul(most) - 1;
    if floor < 0 {
        return None;
    }
    let mut work = WORK;
    let rivals = rivals(grid, &prices.rest, floor, MOST_RIVALS, &mut work);
    if !rivals.whole {
        return None;
    }
    let mut work = WORK;
    let mut search = Outbid::of(counts, &rivals.spots, &prices.rest, served, &mut work);
    search.run(count).then(|| {
        let places = search.places.as_ref();
        let places =
            places.map(|places| places.iter().filter_map(|at| rivals.spots.get(*at).cloned()).collect());
        (search.best, places)
    })
}
