//! Owns the narrowing of a region of places for a size: which places in it can still take more than asked for.

use super::grid::{Grid, Region, bits};

/// Most times that one region is narrowed on end (house rule: later ones gain little).
const PASSES: usize = 3;

/// Narrows regions; holds what each narrowing would else set up anew.
pub(super) struct Narrower<'g> {
    grid: &'g Grid,
    weights: &'g [i64],
    /// The points that count.
    among: Vec<u64>,
    /// Whether points without weight count too, so that a range may begin on one.
    all: bool,
    mask: Vec<u64>,
    /// For each measure the weight at each girth, from the region's first on.
    bins: Vec<Vec<i64>>,
    /// Steps taken, for the budget.
    pub(super) spent: u64,
}

impl<'g> Narrower<'g> {
    /// Over points with these weights; those without weight count where `all` is said.
    pub(super) fn of(grid: &'g Grid, weights: &'g [i64], all: bool) -> Self {
        let among = grid.mask(|point| all || weights.get(point).is_some_and(|weight| *weight > 0));
        let bins = vec![Vec::new(); grid.axes().len()];
        Self { grid, weights, mask: Vec::with_capacity(among.len()), among, all, bins, spent: 0 }
    }

    /// Narrows `region` to where a size takes more weight than `floor`: for each measure the range may begin only
    /// where it alone, slid over what the other measures leave, takes more. Gives a weight that no size in the
    /// region exceeds; none where none exceeds `floor`.
    pub(super) fn narrow(&mut self, region: &mut Region, floor: i64) -> Option<i64> {
        let mut most = i64::MAX;
        for pass in 1.. {
            let total = self.fill(region);
            most = most.min(total);
            if most <= floor {
                return None;
            }
            let mut narrower = false;
            for ((axis, bins), ends) in self.grid.axes().iter().zip(&self.bins).zip(region.iter_mut()) {
                let (first, last) = *ends;
                if first == last {
                    continue;
                }
                let (mut weight, mut end, mut best) = (0, first, 0);
                let mut hull: Option<(usize, usize)> = None;
                let mut ahead = bins.iter();
                for (low, own) in (first..=last).zip(bins) {
                    let stop = axis.end(low);
                    while end < stop {
                        weight += ahead.next().copied().unwrap_or_default();
                        end += 1;
                    }
                    // Where no point stands, the size is as good a little further up.
                    if weight > floor && (self.all || *own > 0) {
                        hull = Some((hull.map_or(low, |(first, _)| first), low));
                        best = best.max(weight);
                    }
                    weight -= own;
                }
                let hull = hull?;
                most = most.min(best);
                if hull != *ends {
                    (*ends, narrower) = (hull, true);
                }
            }
            // What is narrowed to one place is weighed as that.
            if !narrower || (pass >= PASSES && region.iter().any(|(first, last)| first < last)) {
                break;
            }
        }
        Some(most)
    }

    /// The places of one measure at which a range begins on a point of the region and reaches one that those before
    /// it do not; the others take nothing more (derived).
    pub(super) fn steps(
        &mut self,
        region: &Region,
        measure: usize,
        (first, last): (usize, usize),
    ) -> Vec<usize> {
        self.mask.clear();
        self.mask.extend_from_slice(&self.among);
        self.grid.keep(region, None, &mut self.mask);
        let Some(axis) = self.grid.axes().get(measure) else { return Vec::new() };
        let mut stands = vec![false; axis.end(last) - first];
        for point in bits(&self.mask) {
            let cell = self.grid.cells(point).get(measure).copied().unwrap_or_default();
            if let Some(slot) = stands.get_mut(cell - first) {
                *slot = true;
            }
        }
        let mut reached = first;
        let mut steps = Vec::new();
        for low in (first..=last).filter(|low| stands.get(low - first) == Some(&true)) {
            let end = axis.end(low);
            let adds = stands.iter().take(end - first).skip(reached - first).any(|stands| *stands);
            if adds {
                steps.push(low);
            }
            reached = reached.max(end);
        }
        steps
    }

    /// Lays the weight of the region's points into the bins of each measure; gives all of it.
    fn fill(&mut self, region: &Region) -> i64 {
        self.mask.clear();
        self.mask.extend_from_slice(&self.among);
        self.grid.keep(region, None, &mut self.mask);
        for ((axis, bins), (first, last)) in self.grid.axes().iter().zip(&mut self.bins).zip(region) {
            bins.clear();
            bins.resize(axis.end(*last) - first, 0);
            self.spent += u64::try_from(bins.len()).unwrap_or_default();
        }
        let (mut total, mut points) = (0, 0_u64);
        for point in bits(&self.mask) {
            let weight = self.weights.get(point).copied().unwrap_or_default();
            total += weight;
            points += 1;
            for ((bins, cell), (first, _)) in self.bins.iter_mut().zip(self.grid.cells(point)).zip(region) {
                if let Some(bin) = bins.get_mut(cell - first) {
                    *bin += weight;
                }
            }
        }
        let many = u64::try_from(self.grid.axes().len()).unwrap_or_default();
        let words = u64::try_from(self.grid.words()).unwrap_or_default();
        self.spent += many * (points + words / 4 + 4);
        total
    }
}
