//! Owns the most that any size of a given shape can take: a search over regions of places, the most promising first,
//! which can stop at any time with a weight that none exceeds.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::grid::{Grid, Region};
use super::narrowed::Narrower;

/// What is known when a search stops.
pub(super) struct Ceiling {
    /// No size takes more.
    pub(super) most: i64,
    /// A place that takes `most`, where that is more than asked for and the search came to its end.
    pub(super) place: Option<Vec<usize>>,
}

/// The most weight that a size can take, as far as it exceeds `floor`; `work` is what may still be spent.
pub(super) fn ceiling(grid: &Grid, weights: &[i64], floor: i64, work: &mut u64) -> Ceiling {
    let floor = floor.max(0);
    let mut narrower = Narrower::of(grid, weights, false);
    let mut queue: BinaryHeap<(i64, Reverse<usize>, Region)> = BinaryHeap::new();
    let mut number = 0;
    let mut open = |mut region: Region, queue: &mut BinaryHeap<_>, narrower: &mut Narrower| {
        if let Some(most) = narrower.narrow(&mut region, floor) {
            number += 1;
            queue.push((most, Reverse(number), region));
        }
    };
    if grid.points() > 0 {
        open(grid.whole(), &mut queue, &mut narrower);
    }
    let found = loop {
        let Some((most, _, region)) = queue.pop() else { break Ceiling { most: floor, place: None } };
        let widest =
            grid.axes().iter().zip(&region).enumerate().filter(|(_, (_, (first, last)))| first < last);
        let widest = widest
            .map(|(at, (axis, (first, last)))| (axis.apart(*first, *last), at))
            .max_by(|one, other| one.0.total_cmp(&other.0).then(other.1.cmp(&one.1)));
        let Some((_, at)) = widest else {
            break Ceiling { most, place: Some(region.iter().map(|(first, _)| *first).collect()) };
        };
        if narrower.spent >= *work {
            break Ceiling { most, place: None };
        }
        let (mut lower, mut upper) = (region.clone(), region);
        if let (Some(lower), Some(upper)) = (lower.get_mut(at), upper.get_mut(at)) {
            let middle = lower.0.midpoint(lower.1);
            (lower.1, upper.0) = (middle, middle + 1);
        }
        open(lower, &mut queue, &mut narrower);
        open(upper, &mut queue, &mut narrower);
    };
    *work = work.saturating_sub(narrower.spent);
    found
}
