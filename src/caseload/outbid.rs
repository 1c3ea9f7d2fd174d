//! Owns the search for K places of a size that serve more limbs than the best ones known.

use super::spot::{SCALE, Spot};

/// A search over the places that can still be part of something better.
pub(super) struct Outbid<'s> {
    counts: &'s [i64],
    spots: &'s [Spot],
    rest: &'s [i64],
    /// Most limbs served so far.
    pub(super) best: i64,
    /// Where; none while nothing better is found.
    pub(super) places: Option<Vec<usize>>,
    work: &'s mut u64,
}

impl<'s> Outbid<'s> {
    /// Prepares the search: weights of the limbs, places, the part of each limb that sizes compete for, what is
    /// served already.
    pub(super) fn of(
        counts: &'s [i64],
        spots: &'s [Spot],
        rest: &'s [i64],
        best: i64,
        work: &'s mut u64,
    ) -> Self {
        Self { counts, spots, rest, best, places: None, work }
    }

    /// Tries every choice of `left` places; false where that takes too long.
    pub(super) fn run(&mut self, left: usize) -> bool {
        let open = vec![true; self.counts.len()];
        let all: Vec<usize> = (0..self.spots.len()).collect();
        self.from(&all, &mut Vec::new(), &open, 0, left)
    }

    fn from(
        &mut self,
        among: &[usize],
        chosen: &mut Vec<usize>,
        open: &[bool],
        so_far: i64,
        left: usize,
    ) -> bool {
        if so_far > self.best {
            (self.best, self.places) = (so_far, Some(chosen.clone()));
        }
        if left == 0 {
            return true;
        }
        let is_open = |id: &usize| open.get(*id).copied().unwrap_or(false);
        let (mut gains, mut spent, mut most) = (Vec::with_capacity(among.len()), 8, 0);
        for place in among {
            let Some(spot) = self.spots.get(*place) else { continue };
            let (mut gain, mut rest) = (0, 0);
            for id in spot.takes.iter().filter(|id| is_open(id)) {
                gain += self.counts.get(*id).copied().unwrap_or_default();
                rest += self.rest.get(*id).copied().unwrap_or_default();
            }
            spent += u64::try_from(spot.takes.len()).unwrap_or_default();
            if gain > 0 {
                most = most.max(rest);
                gains.push((gain, *place));
            }
        }
        if *self.work < spent {
            return false;
        }
        *self.work -= spent;
        gains.sort_unstable_by_key(|(gain, place)| (std::cmp::Reverse(*gain), *place));
        let alone: i64 = (self.counts.iter().zip(self.rest).zip(open))
            .filter(|(_, open)| **open)
            .map(|((count, rest), _)| SCALE * count - rest)
            .sum();
        let many = i64::try_from(left).unwrap_or(i64::MAX);
        if so_far + (alone + many.saturating_mul(most)) / SCALE <= self.best {
            return true;
        }
        let order: Vec<usize> = gains.iter().map(|(_, place)| *place).collect();
        for (at, (gain, place)) in gains.iter().enumerate() {
            let rest = gains.iter().skip(at).take(left).map(|(gain, _)| gain).sum::<i64>();
            if so_far + rest <= self.best {
                return true;
            }
            let mut then = open.to_vec();
            for id in self.spots.get(*place).into_iter().flat_map(|spot| &spot.takes) {
                if let Some(slot) = then.get_mut(*id) {
                    *slot = false;
                }
            }
            chosen.push(*place);
            let done =
                self.from(order.get(at + 1..).unwrap_or_default(), chosen, &then, so_far + gain, left - 1);
            chosen.pop();
            if !done {
                return false;
            }
        }
        true
    }
}
