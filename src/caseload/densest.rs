//! Owns the search for the one place of a size of a given shape that takes most weight of limbs.

/// The weight of one whole limb.
pub(super) const SCALE: i64 = 1000;

/// Most other places that one search hands back (house rule).
const MOST_KEPT: usize = 64;

/// Limbs as points: a girth for each measure, tenths of a millimetre.
pub(super) struct Densest<'p> {
    points: &'p [Vec<i64>],
    widths: &'p [i64],
}

/// A size at one place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Spot {
    /// Its low ends.
    pub(super) lows: Vec<i64>,
    /// The points that it takes, ascending.
    pub(super) takes: Vec<usize>,
}

/// What a search found.
#[derive(Clone, Debug, Default)]
pub(super) struct Found {
    /// The greatest weight found, and where; none where no place has more than was asked for.
    pub(super) best: Option<(i64, Spot)>,
    /// No place has more weight.
    pub(super) most: i64,
    /// Places found on the way, or all that have more than was asked for.
    pub(super) others: Vec<Spot>,
    /// Whether every place with more weight than was asked for is among them.
    pub(super) is_whole: bool,
}

/// One search.
struct Search<'s> {
    points: &'s [Vec<i64>],
    widths: &'s [i64],
    weights: &'s [i64],
    /// Weight that a place must exceed.
    floor: i64,
    /// Whether places are collected above a fixed floor, else the best alone is wanted.
    all: bool,
    best: Option<(i64, Vec<i64>)>,
    others: Vec<Vec<i64>>,
    most_kept: usize,
    left_out: i64,
    work: &'s mut u64,
}

impl<'p> Densest<'p> {
    /// A search over points for a size of these widths.
    pub(super) fn of(points: &'p [Vec<i64>], widths: &'p [i64]) -> Self {
        Self { points, widths }
    }

    /// The place with most weight above `floor`; `work` is what may still be spent.
    pub(super) fn heaviest(&self, weights: &[i64], floor: i64, work: &mut u64) -> Found {
        self.search(weights, floor, false, MOST_KEPT, work)
    }

    /// Every place with more weight than `floor`, at most `most`.
    pub(super) fn above(&self, weights: &[i64], floor: i64, most: usize, work: &mut u64) -> Found {
        self.search(weights, floor, true, most, work)
    }

    fn search(&self, weights: &[i64], floor: i64, all: bool, most_kept: usize, work: &mut u64) -> Found {
        let floor = floor.max(0);
        let mut search = Search {
            points: self.points,
            widths: self.widths,
            weights,
            floor,
            all,
            best: None,
            others: Vec::new(),
            most_kept,
            left_out: 0,
            work,
        };
        // Where every place counts, points without weight tell places apart.
        let ids = weights.iter().enumerate().filter(|(_, weight)| all || **weight > 0);
        let ids: Vec<usize> = ids.map(|(at, _)| at).collect();
        let total = ids.iter().filter_map(|id| weights.get(*id)).sum();
        search.narrow(ids, total, &mut Vec::new());
        let is_whole = search.left_out <= floor && search.others.len() < most_kept;
        let (best, others, left_out) =
            (search.best.take(), std::mem::take(&mut search.others), search.left_out);
        let most = best.as_ref().map_or(floor, |(weight, _)| *weight).max(left_out);
        Found {
            best: best.map(|(weight, lows)| (weight, self.spot(lows))),
            most,
            others: others.into_iter().map(|lows| self.spot(lows)).collect(),
            is_whole,
        }
    }

    /// The size that begins at these low ends.
    pub(super) fn spot(&self, lows: Vec<i64>) -> Spot {
        let inside = |point: &[i64]| {
            let mut all = point.iter().zip(&lows).zip(self.widths);
            all.all(|((girth, low), width)| (*low..=low + width).contains(girth))
        };
        let takes = self.points.iter().enumerate().filter(|(_, point)| inside(point)).map(|(at, _)| at);
        let takes = takes.collect();
        Spot { lows, takes }
    }
}

impl Search<'_> {
    fn weight(&self, id: usize) -> i64 {
        self.weights.get(id).copied().unwrap_or_default()
    }

    /// Slides the window of the next measure over the points that are inside those before; a window that takes
    /// nothing that the one before it lacks is left out, since it is never better (derived).
    fn narrow(&mut self, mut ids: Vec<usize>, total: i64, lows: &mut Vec<i64>) {
        if total <= self.floor {
            return;
        }
        let measure = lows.len();
        let Some(width) = self.widths.get(measure).copied() else {
            self.keep(total, lows);
            return;
        };
        let spent = u64::try_from(ids.len()).unwrap_or(u64::MAX) + 4;
        if *self.work < spent {
            *self.work = 0;
            self.left_out = self.left_out.max(total);
            return;
        }
        *self.work -= spent;
        let points = self.points;
        let girth =
            |id: usize| points.get(id).and_then(|point| point.get(measure)).copied().unwrap_or_default();
        ids.sort_unstable_by_key(|id| (girth(*id), *id));
        let mut windows: Vec<(i64, usize, usize)> = Vec::new();
        let (mut end, mut weight) = (0, 0);
        for (start, id) in ids.iter().enumerate() {
            let before = end;
            while let Some(next) = ids.get(end).filter(|next| girth(**next) <= girth(*id) + width) {
                weight += self.weight(*next);
                end += 1;
            }
            if end > before && weight > self.floor {
                windows.push((weight, start, end));
            }
            weight -= self.weight(*id);
        }
        windows.sort_by_key(|(weight, start, _)| (std::cmp::Reverse(*weight), *start));
        for (weight, start, end) in windows {
            if weight <= self.floor {
                break;
            }
            let inside = ids.get(start..end).unwrap_or_default().to_vec();
            lows.push(inside.first().map_or(0, |id| girth(*id)));
            self.narrow(inside, weight, lows);
            lows.pop();
        }
    }

    fn keep(&mut self, weight: i64, lows: &[i64]) {
        if self.best.as_ref().is_none_or(|(best, _)| weight > *best) {
            self.best = Some((weight, lows.to_vec()));
        }
        if self.all {
            if self.others.len() < self.most_kept {
                self.others.push(lows.to_vec());
            }
        } else {
            self.floor = self.floor.max(weight);
            if self.others.len() >= self.most_kept {
                self.others.remove(0);
            }
            self.others.push(lows.to_vec());
        }
    }
}
