//! Owns the placing of K sizes of one shape so that they serve most of a caseload, with a bound on what any K could.

use std::collections::BTreeSet;

/// Most places of a size that are tried one by one; beyond them only places that begin at one limb are
/// (house rule).
const MOST_PLACES: usize = 20_000;

/// Most sets of limbs among which the exact best is sought (house rule).
const MOST_EXACT: usize = 300;

/// Most steps of that search (house rule: a second).
const MOST_STEPS: u32 = 400_000;

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
/// Any size can be moved up until each low end stands on a girth of a limb without losing one (derived), so
/// those places are enough: where they are few the best is sought exactly, else greedily. The bound of a greedy
/// answer: what is served so far and the `count` greatest gains that any place still has, at every step; where
/// not all places are tried, with ranges that reach a width further to both sides (derived: a size that takes a
/// limb lies within the widened size that begins at it).
pub fn design(limbs: &[Vec<i64>], widths: &[i64], count: usize) -> Designed {
    let (places, whole) = places(limbs, widths);
    let tight = covers(limbs, &places, widths, 1);
    let greedy = greedy(&tight, limbs.len(), count);
    let wide = if whole { None } else { Some(covers(limbs, &places, widths, 2)) };
    let bound = bound(wide.as_ref().unwrap_or(&tight), limbs.len(), count);
    let mut best = (greedy.0, greedy.1, bound.min(limbs.len()));
    if whole
        && best.1 < best.2
        && let Some(exact) = exact(&tight, limbs.len(), count, best.1)
    {
        best = (exact.0.unwrap_or(best.0), exact.1, exact.1);
    }
    let mut sizes: Vec<Vec<i64>> = best.0.iter().filter_map(|place| places.get(*place).cloned()).collect();
    sizes.sort();
    Designed { sizes, served: best.1, bound: best.2 }
}

/// Places of a size, and whether they are all that there need be.
fn places(limbs: &[Vec<i64>], widths: &[i64]) -> (Vec<Vec<i64>>, bool) {
    let girths = |measure: usize| -> BTreeSet<i64> {
        limbs.iter().filter_map(|limb| limb.get(measure).copied()).collect()
    };
    let by_measure: Vec<BTreeSet<i64>> = (0..widths.len()).map(girths).collect();
    let all = by_measure.iter().try_fold(1_usize, |product, own| product.checked_mul(own.len()));
    if all.is_some_and(|all| all <= MOST_PLACES) {
        let mut found = vec![Vec::new()];
        for own in &by_measure {
            found = found
                .iter()
                .flat_map(|begun: &Vec<i64>| {
                    own.iter().map(|low| begun.iter().copied().chain(std::iter::once(*low)).collect())
                })
                .collect();
        }
        return (found, true);
    }
    // Sizes around each limb: it stands at the low end, a quarter, the middle and three quarters of all ranges.
    let around = |limb: &Vec<i64>| {
        [0, 1, 2, 3].map(|quarter| {
            limb.iter().zip(widths).map(|(girth, width)| girth - quarter * width / 4).collect::<Vec<i64>>()
        })
    };
    let found: BTreeSet<Vec<i64>> = limbs.iter().flat_map(around).collect();
    (found.into_iter().collect(), false)
}

/// Which limbs a size at each place takes; with `times` 2 its ranges reach a width further to both sides.
fn covers(limbs: &[Vec<i64>], places: &[Vec<i64>], widths: &[i64], times: i64) -> Vec<Vec<usize>> {
    let takes = |limb: &Vec<i64>, place: &Vec<i64>| {
        limb.iter().zip(place).zip(widths).all(|((girth, low), width)| {
            let room = (times - 1) * width;
            (low - room..=low + width + room).contains(girth)
        })
    };
    let of = |place: &Vec<i64>| {
        let all = limbs.iter().enumerate();
        all.filter(|(_, limb)| takes(limb, place)).map(|(number, _)| number).collect()
    };
    places.iter().map(of).collect()
}

/// At each step the place that adds most; the places, and how many limbs.
fn greedy(covers: &[Vec<usize>], limbs: usize, count: usize) -> (Vec<usize>, usize) {
    let mut served = vec![false; limbs];
    let mut chosen = Vec::new();
    for _ in 0..count {
        let gains = covers.iter().map(|own| gain(own, &served)).enumerate();
        let best = gains.max_by_key(|(place, gain)| (*gain, std::cmp::Reverse(*place)));
        let Some((place, 1..)) = best else { break };
        mark(covers.get(place), &mut served);
        chosen.push(place);
    }
    let sum = served.iter().filter(|one| **one).count();
    (chosen, sum)
}

/// The least of: served so far and the greatest gains still to be had, over the greedy steps.
fn bound(covers: &[Vec<usize>], limbs: usize, count: usize) -> usize {
    let mut served = vec![false; limbs];
    let mut least = limbs;
    for _ in 0..=count {
        let mut gains: Vec<usize> = covers.iter().map(|own| gain(own, &served)).collect();
        gains.sort_unstable_by_key(|gain| std::cmp::Reverse(*gain));
        let so_far = served.iter().filter(|one| **one).count();
        least = least.min(so_far + gains.iter().take(count).sum::<usize>());
        let best = covers.iter().max_by_key(|own| gain(own, &served));
        mark(best, &mut served);
    }
    least
}

/// The best of all, better than `known`; none where the search would take too long, no places where none is
/// better.
fn exact(
    covers: &[Vec<usize>],
    limbs: usize,
    count: usize,
    known: usize,
) -> Option<(Option<Vec<usize>>, usize)> {
    // A set within another is never needed.
    let mut kept: Vec<(usize, BTreeSet<usize>)> = Vec::new();
    let mut order: Vec<usize> = (0..covers.len()).collect();
    order.sort_by_key(|place| std::cmp::Reverse(covers.get(*place).map_or(0, Vec::len)));
    for place in order {
        let own: BTreeSet<usize> = covers.get(place)?.iter().copied().collect();
        if !own.is_empty() && !kept.iter().any(|(_, other)| own.is_subset(other)) {
            kept.push((place, own));
        }
        if kept.len() > MOST_EXACT {
            return None;
        }
    }
    let mut search = Search { kept: &kept, count, best: known, places: None, steps: 0 };
    search.from(0, &mut Vec::new(), &vec![false; limbs], 0).then_some((search.places, search.best))
}

struct Search<'k> {
    kept: &'k [(usize, BTreeSet<usize>)],
    count: usize,
    best: usize,
    places: Option<Vec<usize>>,
    steps: u32,
}

impl Search<'_> {
    /// Tries every choice from the set `start` on; false where that takes too long.
    fn from(&mut self, start: usize, chosen: &mut Vec<usize>, served: &[bool], so_far: usize) -> bool {
        if so_far > self.best {
            (self.best, self.places) = (so_far, Some(chosen.clone()));
        }
        self.steps += 1;
        if self.steps > MOST_STEPS {
            return false;
        }
        let left = self.count.saturating_sub(chosen.len());
        let rest = self.kept.get(start..).unwrap_or_default();
        let mut gains: Vec<usize> =
            rest.iter().map(|(_, own)| own.iter().filter(|one| is_new(served, **one)).count()).collect();
        gains.sort_unstable_by_key(|gain| std::cmp::Reverse(*gain));
        if left == 0 || so_far + gains.iter().take(left).sum::<usize>() <= self.best {
            return true;
        }
        for (offset, (place, own)) in rest.iter().enumerate() {
            let mut then = served.to_vec();
            let before = then.iter().filter(|one| **one).count();
            for limb in own {
                if let Some(slot) = then.get_mut(*limb) {
                    *slot = true;
                }
            }
            let after = then.iter().filter(|one| **one).count();
            chosen.push(*place);
            let done = self.from(start + offset + 1, chosen, &then, so_far + after - before);
            chosen.pop();
            if !done {
                return false;
            }
        }
        true
    }
}

fn is_new(served: &[bool], limb: usize) -> bool {
    !served.get(limb).copied().unwrap_or(true)
}

fn gain(own: &[usize], served: &[bool]) -> usize {
    own.iter().filter(|limb| is_new(served, **limb)).count()
}

fn mark(own: Option<&Vec<usize>>, served: &mut [bool]) {
    for limb in own.into_iter().flatten() {
        if let Some(slot) = served.get_mut(*limb) {
            *slot = true;
        }
    }
}
