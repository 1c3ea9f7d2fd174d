//! Owns one place of a size of a design: where it begins, and the limbs that it takes.

use super::grid::Grid;

/// The weight of one whole limb.
pub(super) const SCALE: i64 = 1000;

/// A size at one place.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Spot {
    /// Where it begins, by place on each axis.
    pub(super) at: Vec<usize>,
    /// The points that it takes, ascending.
    pub(super) takes: Vec<usize>,
}

impl Spot {
    /// The size that begins at these places.
    pub(super) fn of(grid: &Grid, at: Vec<usize>) -> Self {
        let takes = grid.taken(&at);
        Self { at, takes }
    }

    /// What it takes by these weights.
    pub(super) fn weight(&self, weights: &[i64]) -> i64 {
        self.takes.iter().filter_map(|point| weights.get(*point)).sum()
    }

    /// Nothing is left of what it takes.
    pub(super) fn close(&self, open: &mut [i64]) {
        for point in &self.takes {
            if let Some(slot) = open.get_mut(*point) {
                *slot = 0;
            }
        }
    }
}
