//! Owns the placing of K sizes of one shape so that they serve most of a caseload, with a bound on what any K could.

use std::collections::BTreeMap;

use super::densest::{Densest, SCALE, Spot};
use super::outbid::Outbid;
use super::price::{Prices, STEPS};

/// Limbs looked at that one design may take (house rule: a few seconds).
const WORK: u64 = 400_000_000;

/// The same for each limb, so that few limbs are quick (house rule).
const WORK_EACH: u64 = 400_000;

/// Most rounds in which the bound is brought down (house rule: later ones gain little).
const ROUNDS: usize = 60;

/// Most places that are kept to settle the bound on (house rule).
const MOST_SPOTS: usize = 400;

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
/// places are enough. The sizes are placed one by one where each adds most, then each is placed anew while that
/// helps; the bound is that of the linear relaxation as far as some rounds bring it down, and where little is
/// left between the two, every place that could still be part of something better is tried. The same limbs give the same sizes.
pub fn design(limbs: &[Vec<i64>], widths: &[i64], count: usize) -> Designed {
    let mut merged: BTreeMap<&Vec<i64>, i64> = BTreeMap::new();
    for limb in limbs {
        *merged.entry(limb).or_default() += 1;
    }
    let points: Vec<Vec<i64>> = merged.keys().map(|limb| (*limb).clone()).collect();
    let counts: Vec<i64> = merged.values().copied().collect();
    let densest = Densest::of(&points, widths);
    let mut work = budget(points.len());
    let mut spots: Vec<Spot> = Vec::new();
    let mut chosen = greedy(&densest, &counts, count, &mut spots, &mut work);
    improve(&densest, &counts, &mut chosen, &mut work);
    let served = served_by(&chosen, &counts);
    spots.extend(chosen.iter().cloned());
    let (bound, prices) = bound(&densest, &counts, &mut spots, (count, served), &mut work);
    let mut done = (served, bound);
    if served < bound
        && let Some((best, better)) = outbid(&densest, &counts, &prices, (count, served))
    {
        done = (best, best);
        chosen = better.unwrap_or(chosen);
    }
    let mut sizes: Vec<Vec<i64>> = chosen.into_iter().map(|spot| spot.lows).collect();
    sizes.sort();
    let number = |count: i64| usize::try_from(count).unwrap_or_default();
    Designed { sizes, served: number(done.0), bound: number(done.1) }
}

/// What the whole search for so many limbs may take.
fn budget(limbs: usize) -> u64 {
    WORK.min(WORK_EACH.saturating_mul(u64::try_from(limbs).unwrap_or(u64::MAX)))
}

/// At each step the place that adds most.
fn greedy(
    densest: &Densest<'_>,
    counts: &[i64],
    count: usize,
    spots: &mut Vec<Spot>,
    work: &mut u64,
) -> Vec<Spot> {
    let mut open: Vec<i64> = counts.iter().map(|count| SCALE * count).collect();
    let mut chosen = Vec::new();
    for _ in 0..count {
        let found = densest.heaviest(&open, 0, work);
        spots.extend(found.others);
        let Some((_, spot)) = found.best else { break };
        close(&spot, &mut open);
        chosen.push(spot);
    }
    chosen
}

/// Places each size anew where that serves more, until none moves.
fn improve(densest: &Densest<'_>, counts: &[i64], chosen: &mut [Spot], work: &mut u64) {
    let share = *work / 4;
    let mut own = share;
    let mut still = 0;
    let mut at = 0;
    while still < chosen.len() && own > 0 {
        let mut open: Vec<i64> = counts.iter().map(|count| SCALE * count).collect();
        let others = chosen.iter().enumerate().filter(|(other, _)| *other != at);
        others.for_each(|(_, spot)| close(spot, &mut open));
        let now: i64 =
            chosen.get(at).map_or(0, |spot| spot.takes.iter().filter_map(|id| open.get(*id)).sum());
        still += 1;
        if let Some((_, spot)) = densest.heaviest(&open, now, &mut own).best
            && let Some(slot) = chosen.get_mut(at)
        {
            (*slot, still) = (spot, 0);
        }
        at = (at + 1) % chosen.len().max(1);
    }
    *work -= share - own;
}

/// The least bound that some rounds find, and the values that give it.
fn bound(
    densest: &Densest<'_>,
    counts: &[i64],
    spots: &mut Vec<Spot>,
    (count, served): (usize, i64),
    work: &mut u64,
) -> (i64, Prices) {
    let many = i64::try_from(count).unwrap_or(i64::MAX);
    let all: i64 = counts.iter().sum();
    let whole = || Prices { rest: counts.iter().map(|count| SCALE * count).collect() };
    let (mut prices, mut least, mut kept) = (whole(), all, whole());
    let mut share = *work / 2;
    let mut stale = 0;
    for _ in 0..ROUNDS {
        if least <= served || share == 0 {
            break;
        }
        let taken: usize = spots.iter().map(|spot| spot.takes.len()).sum();
        share = share.saturating_sub(u64::try_from(taken * STEPS / 4).unwrap_or(u64::MAX));
        prices.settle(counts, spots, count, served);
        let found = densest.heaviest(&prices.rest, 0, &mut share);
        let bound = (prices.alone(counts) + many.saturating_mul(found.most)) / SCALE;
        if bound < least {
            least = bound;
            kept = Prices { rest: prices.rest.clone() };
        }
        let before = spots.len();
        for spot in found.others.into_iter().rev() {
            if !spots.contains(&spot) {
                spots.push(spot);
            }
        }
        stale = if spots.len() == before { stale + 1 } else { 0 };
        if stale > 3 {
            break;
        }
        if spots.len() > MOST_SPOTS {
            let surplus = spots.len() - MOST_SPOTS;
            spots.drain(..surplus);
        }
    }
    (least.max(served), kept)
}

/// The best of all where every place that could be part of something better can be tried: how many it serves,
/// and its places where they are others.
fn outbid(
    densest: &Densest<'_>,
    counts: &[i64],
    prices: &Prices,
    (count, served): (usize, i64),
) -> Option<(i64, Option<Vec<Spot>>)> {
    let mut work = budget(counts.len()) / 4;
    // K sizes with this one serve at most the limbs' own worth, K − 1 times the most, and its own: it must take more than what is missing.
    let most = densest.heaviest(&prices.rest, 0, &mut work).most;
    let others = i64::try_from(count).ok()?.saturating_sub(1);
    let floor = SCALE * (served + 1) - prices.alone(counts) - others.saturating_mul(most) - 1;
    let rivals = densest.above(&prices.rest, floor, MOST_RIVALS, &mut work);
    if !rivals.is_whole || floor < 0 {
        return None;
    }
    let mut work = budget(counts.len());
    let mut search = Outbid::of(counts, &rivals.others, &prices.rest, served, &mut work);
    search.run(count).then(|| {
        let places = search
            .places
            .as_ref()
            .map(|places| places.iter().filter_map(|place| rivals.others.get(*place).cloned()).collect());
        (search.best, places)
    })
}

fn served_by(chosen: &[Spot], counts: &[i64]) -> i64 {
    let mut open = counts.to_vec();
    for spot in chosen {
        close(spot, &mut open);
    }
    counts.iter().sum::<i64>() - open.iter().sum::<i64>()
}

fn close(spot: &Spot, open: &mut [i64]) {
    for id in &spot.takes {
        if let Some(slot) = open.get_mut(*id) {
            *slot = 0;
        }
    }
}
