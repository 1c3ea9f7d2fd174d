//! Owns the placing of sizes one after the other and anew, and the places that come up on the way.

use std::cmp::Reverse;
use std::collections::BTreeSet;

use super::climb::climb;
use super::grid::Grid;
use super::spot::{SCALE, Spot};

/// Places that climbs begin from, with a limb in their middle, taken evenly (house rule).
const STARTS: usize = 200;

/// Most known places that are climbed from as well (house rule).
const CLIMBED: usize = 40;

/// Most places kept of the climbs for one size (house rule).
const KEPT: usize = 20;

/// Most places added to bring the bound down in one round (house rule).
const ADDED: usize = 60;

/// Places added in such a round lie less than one part in so many below the heaviest (house rule).
const NEAR: i64 = 50;

/// Steps that placing may take, a step being a look at a limb or a girth (house rule: about a second).
const WORK: u64 = 500_000_000;

/// Sizes of a design being placed.
pub(super) struct Placing<'g> {
    grid: &'g Grid,
    counts: &'g [i64],
    /// A place around each limb.
    starts: Vec<Vec<usize>>,
    /// How often climbs began; each time they begin at other limbs.
    turn: usize,
    pool: Vec<Spot>,
    known: BTreeSet<Vec<usize>>,
    work: u64,
}

impl<'g> Placing<'g> {
    /// Over points with these counts.
    pub(super) fn of(grid: &'g Grid, counts: &'g [i64]) -> Self {
        let around = |point: usize| {
            let cells = grid.cells(point).iter().zip(grid.axes());
            cells.map(|(cell, axis)| axis.place_of(axis.value(*cell) - axis.width() / 2)).collect()
        };
        let starts = (0..grid.points()).map(around).collect();
        Self { grid, counts, starts, turn: 0, pool: Vec::new(), known: BTreeSet::new(), work: WORK }
    }

    /// The places known.
    pub(super) fn pool(&self) -> &[Spot] {
        &self.pool
    }

    /// Limbs that these sizes serve together.
    pub(super) fn served(&self, chosen: &[Spot]) -> i64 {
        self.counts.iter().sum::<i64>() - self.open(chosen, None).iter().sum::<i64>() / SCALE
    }

    /// Knows one more place; false where it was known.
    pub(super) fn push(&mut self, at: Vec<usize>) -> bool {
        let is_new = self.known.insert(at.clone());
        if is_new {
            self.pool.push(Spot::of(self.grid, at));
        }
        is_new
    }

    /// At each step the place that adds most.
    pub(super) fn greedy(&mut self, count: usize) -> Vec<Spot> {
        let mut chosen: Vec<Spot> = Vec::new();
        while chosen.len() < count {
            let open = self.open(&chosen, None);
            let Some((_, place)) = self.placed(&open) else { break };
            chosen.push(Spot::of(self.grid, place));
        }
        chosen
    }

    /// Places each size anew where that serves more, until none moves or the steps are used up.
    pub(super) fn improve(&mut self, chosen: &mut [Spot]) {
        let (mut still, mut at) = (0, 0);
        while still < chosen.len() && self.work > 0 {
            let open = self.open(chosen, Some(at));
            still += 1;
            if let Some((weight, place)) = self.placed(&open)
                && let Some(slot) = chosen.get_mut(at)
                && weight > slot.weight(&open)
            {
                (*slot, still) = (Spot::of(self.grid, place), 0);
            }
            at = (at + 1) % chosen.len().max(1);
        }
    }

    /// Chooses among the known places alone, beginning with each of those heaviest by `rest` in turn; the best
    /// choice, where it serves more than `served`.
    pub(super) fn among_known(&mut self, rest: &[i64], count: usize, served: i64) -> Option<Vec<Spot>> {
        let mut first: Vec<(i64, usize)> = self.weighed(rest);
        first.truncate(STARTS);
        let mut best: (i64, Option<Vec<Spot>>) = (served, None);
        for (_, begin) in first {
            if self.work == 0 {
                break;
            }
            let mut chosen: Vec<Spot> = self.pool.get(begin).cloned().into_iter().collect();
            while chosen.len() < count {
                let open = self.open(&chosen, None);
                let Some((_, at)) = self.heaviest_known(&open) else { break };
                chosen.extend(self.pool.get(at).cloned());
            }
            let (mut still, mut at) = (0, 0);
            while still < chosen.len() {
                let open = self.open(&chosen, Some(at));
                still += 1;
                if let Some((weight, better)) = self.heaviest_known(&open)
                    && let Some((slot, better)) = chosen.get_mut(at).zip(self.pool.get(better))
                    && weight > slot.weight(&open)
                {
                    (*slot, still) = (better.clone(), 0);
                }
                at = (at + 1) % chosen.len().max(1);
            }
            let served = self.served(&chosen);
            if served > best.0 {
                best = (served, Some(chosen));
            }
        }
        best.1
    }

    /// Knows the places that climbs by these weights end at, as far as they are about as heavy as `known` or more:
    /// the heaviest weight.
    pub(super) fn add_by(&mut self, rest: &[i64], known: i64) -> i64 {
        let found = self.climbs(rest);
        let top = found.first().map_or(0, |(weight, _)| *weight);
        let near = found.into_iter().take_while(|(weight, _)| *weight > known - known / NEAR);
        let mut added = 0;
        for (_, at) in near {
            if added < ADDED && self.push(at) {
                added += 1;
            }
        }
        top
    }

    /// Keeps the places heaviest by these weights, as many as take `most` limbs one by one.
    pub(super) fn trim(&mut self, rest: &[i64], most: usize) {
        if self.taken() > most {
            self.pool.sort_by_cached_key(|spot| Reverse(spot.weight(rest)));
            let mut taken = 0;
            let within = |spot: &Spot| {
                taken += spot.takes.len();
                taken <= most
            };
            let keep = self.pool.iter().map(within).take_while(|within| *within).count();
            for spot in self.pool.drain(keep..) {
                self.known.remove(&spot.at);
            }
        }
    }

    /// How many limbs the places known take, one by one.
    pub(super) fn taken(&self) -> usize {
        self.pool.iter().map(|spot| spot.takes.len()).sum()
    }

    /// The weight of each point that none of `chosen` takes, leaving one of them out.
    fn open(&self, chosen: &[Spot], without: Option<usize>) -> Vec<i64> {
        let mut open: Vec<i64> = self.counts.iter().map(|count| SCALE * count).collect();
        for (_, spot) in chosen.iter().enumerate().filter(|(at, _)| Some(*at) != without) {
            spot.close(&mut open);
        }
        open
    }

    /// The place that takes most of what is open, and what it takes; the best found on the way are known from then on.
    fn placed(&mut self, open: &[i64]) -> Option<(i64, Vec<usize>)> {
        let found = self.climbs(open);
        for (_, at) in found.iter().take(KEPT) {
            self.push(at.clone());
        }
        found.into_iter().next()
    }

    /// Where climbs end that begin at the starts and at the heaviest places known: those that take anything, the
    /// heaviest first.
    fn climbs(&mut self, weights: &[i64]) -> Vec<(i64, Vec<usize>)> {
        let among = self.grid.mask(|point| weights.get(point).is_some_and(|weight| *weight > 0));
        let known = self.weighed(weights);
        let known = known.iter().take(CLIMBED).filter_map(|(_, at)| self.pool.get(*at));
        let every = self.starts.len().div_ceil(STARTS).max(1);
        let starts = self.starts.iter().skip(self.turn % every).step_by(every);
        let from = known.map(|spot| &spot.at).chain(starts);
        let mut work = self.work;
        let ends = from.map(|start| climb(self.grid, weights, &among, start, &mut work));
        let mut found: Vec<(i64, Vec<usize>)> = ends.filter(|(weight, _)| *weight > 0).collect();
        self.work = work;
        self.turn += 1;
        found.sort_unstable_by(|one, other| other.0.cmp(&one.0).then_with(|| one.1.cmp(&other.1)));
        found.dedup();
        found
    }

    /// The known place that takes most of what is open.
    fn heaviest_known(&mut self, open: &[i64]) -> Option<(i64, usize)> {
        self.weighed(open).first().copied().filter(|(weight, _)| *weight > 0)
    }

    /// The known places by weight, the heaviest first.
    fn weighed(&mut self, weights: &[i64]) -> Vec<(i64, usize)> {
        self.work = self.work.saturating_sub(u64::try_from(self.taken()).unwrap_or_default());
        let mut known: Vec<(i64, usize)> =
            self.pool.iter().enumerate().map(|(at, spot)| (spot.weight(weights), at)).collect();
        known.sort_unstable_by_key(|(weight, at)| (Reverse(*weight), *at));
        known
    }
}
