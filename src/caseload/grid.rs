//! Owns the limbs of a design as points of a grid: for each measure the girths that occur, and the points below each
//! as bits, so that the limbs inside a size are told without looking at every limb.

/// The limbs of a design.
pub(super) struct Grid {
    axes: Vec<Axis>,
    /// The place of each point on each axis, point by point.
    cells: Vec<usize>,
    points: usize,
    words: usize,
}

/// One measure.
pub(super) struct Axis {
    /// The girths that occur, ascending, tenths of a millimetre.
    values: Vec<i64>,
    /// For a range that begins at each of them, the first girth beyond its end.
    ends: Vec<usize>,
    /// For each girth and the end, the points below it.
    below: Vec<Vec<u64>>,
    /// The width of a range.
    width: i64,
}

/// Where the range of each measure may begin, as first and last place on its axis.
pub(super) type Region = Vec<(usize, usize)>;

impl Grid {
    /// Lays out points (a girth for each width, tenths of a millimetre) for ranges of these widths.
    pub(super) fn of(points: &[Vec<i64>], widths: &[i64]) -> Self {
        let words = points.len().div_ceil(64);
        let axes: Vec<Axis> = widths
            .iter()
            .enumerate()
            .map(|(measure, width)| {
                let girths = points.iter().filter_map(|point| point.get(measure).copied());
                Axis::of(&girths.collect::<Vec<_>>(), *width, words)
            })
            .collect();
        let cell = |point: &Vec<i64>, at: usize, axis: &Axis| {
            axis.place_of(point.get(at).copied().unwrap_or_default())
        };
        let cells = points
            .iter()
            .flat_map(|point| axes.iter().enumerate().map(move |(at, axis)| cell(point, at, axis)))
            .collect();
        Self { axes, cells, points: points.len(), words }
    }

    /// The measures.
    pub(super) fn axes(&self) -> &[Axis] {
        &self.axes
    }

    /// The places of a point.
    pub(super) fn cells(&self, point: usize) -> &[usize] {
        let many = self.axes.len();
        self.cells.get(point * many..(point + 1) * many).unwrap_or_default()
    }

    /// How many points there are.
    pub(super) fn points(&self) -> usize {
        self.points
    }

    /// Words of the bits of all points.
    pub(super) fn words(&self) -> usize {
        self.words
    }

    /// The points for which `is` holds.
    pub(super) fn mask(&self, is: impl Fn(usize) -> bool) -> Vec<u64> {
        let mut mask = vec![0; self.words];
        for point in (0..self.points).filter(|point| is(*point)) {
            if let Some(word) = mask.get_mut(point / 64) {
                *word |= 1 << (point % 64);
            }
        }
        mask
    }

    /// Every place where a size may begin.
    pub(super) fn whole(&self) -> Region {
        self.axes.iter().map(|axis| (0, axis.values.len().saturating_sub(1))).collect()
    }

    /// Keeps of `among` the points that some size of the region takes, but for one measure.
    pub(super) fn keep(&self, region: &Region, without: Option<usize>, among: &mut [u64]) {
        for (at, (axis, (first, last))) in self.axes.iter().zip(region).enumerate() {
            if without != Some(at) {
                let (from, to) = (axis.below(*first), axis.below(axis.end(*last)));
                for ((word, from), to) in among.iter_mut().zip(from).zip(to) {
                    *word &= to & !from;
                }
            }
        }
    }

    /// The points of a size that begins at these places, ascending.
    pub(super) fn taken(&self, at: &[usize]) -> Vec<usize> {
        let mut mask = self.mask(|_| true);
        self.keep(&at.iter().map(|place| (*place, *place)).collect(), None, &mut mask);
        bits(&mask).collect()
    }

    /// The girths at which a size begins.
    pub(super) fn lows(&self, at: &[usize]) -> Vec<i64> {
        self.axes.iter().zip(at).map(|(axis, place)| axis.value(*place)).collect()
    }
}

impl Axis {
    fn of(girths: &[i64], width: i64, words: usize) -> Self {
        let mut values = girths.to_vec();
        values.sort_unstable();
        values.dedup();
        let ends = values.iter().map(|low| values.partition_point(|girth| *girth <= low + width)).collect();
        let mut by_girth: Vec<(i64, usize)> =
            girths.iter().enumerate().map(|(point, girth)| (*girth, point)).collect();
        by_girth.sort_unstable();
        let mut rest = by_girth.iter().peekable();
        let mut so_far = vec![0_u64; words];
        let mut below = Vec::with_capacity(values.len() + 1);
        for value in &values {
            below.push(so_far.clone());
            while let Some((_, point)) = rest.next_if(|(girth, _)| girth <= value) {
                if let Some(word) = so_far.get_mut(point / 64) {
                    *word |= 1 << (point % 64);
                }
            }
        }
        below.push(so_far);
        Self { values, ends, below, width }
    }

    /// How many girths occur.
    pub(super) fn len(&self) -> usize {
        self.values.len()
    }

    /// The first girth beyond a range that begins at this place.
    pub(super) fn end(&self, place: usize) -> usize {
        self.ends.get(place).copied().unwrap_or(self.values.len())
    }

    /// How far two beginnings lie apart, in widths of a range.
    #[expect(clippy::cast_precision_loss, reason = "girths far below 2^53")]
    pub(super) fn apart(&self, first: usize, last: usize) -> f64 {
        (self.value(last) - self.value(first)) as f64 / (self.width.max(1)) as f64
    }

    /// The place of the last girth at or below this one.
    pub(super) fn place_of(&self, girth: i64) -> usize {
        self.values.partition_point(|value| *value <= girth).saturating_sub(1)
    }

    /// The girth at a place.
    pub(super) fn value(&self, place: usize) -> i64 {
        self.values.get(place).copied().unwrap_or_default()
    }

    /// The width of a range.
    pub(super) fn width(&self) -> i64 {
        self.width
    }

    fn below(&self, place: usize) -> &[u64] {
        self.below.get(place).map_or(&[], Vec::as_slice)
    }
}

/// The points of a mask, ascending.
pub(super) fn bits(mask: &[u64]) -> impl Iterator<Item = usize> {
    mask.iter().enumerate().flat_map(|(at, word)| {
        let mut rest = *word;
        std::iter::from_fn(move || {
            (rest != 0).then(|| {
                let bit = rest.trailing_zeros() as usize;
                rest &= rest - 1;
                64 * at + bit
            })
        })
    })
}
