//! Owns the ranges of a chart side by side, so that one girth is held against all sizes at once.

use super::case::{Case, place};
use crate::garment::Chart;
use crate::quantity::Girth;

/// The ranges of one measure over all sizes, tenths of a millimetre.
#[derive(Clone, Debug)]
pub(super) struct Lane {
    /// The measure's place along the limb.
    pub(super) place: usize,
    /// Low + high of each size.
    pub(super) sums: Vec<i32>,
    /// High − low of each size.
    pub(super) widths: Vec<i32>,
}

/// A chart all of whose ranges have both ends.
#[derive(Clone, Debug)]
pub(super) struct Lanes {
    pub(super) lanes: Vec<Lane>,
    pub(super) sizes: usize,
    /// The printed step, tenths of a millimetre; 1 = not rounded.
    step: i32,
    /// Places k of pairs k, k + 1 that a limb may lie between.
    pub(super) gaps: Vec<usize>,
}

/// What is worked out for one case, used again for each.
#[derive(Clone, Debug, Default)]
pub(super) struct Held {
    /// The girths of the measures, rounded to the printed step.
    pub(super) girths: Vec<i32>,
    /// Twice the least margin of each size; negative outside.
    pub(super) least: Vec<i32>,
    /// Twice the sum of the misses of each size; worked out when no size takes the limb.
    pub(super) sums: Vec<i32>,
}

impl Lanes {
    /// The lanes of a chart; none where a range has an open end, or the printed step is no whole
    /// number of tenths of a millimetre.
    pub(super) fn of(chart: &Chart) -> Option<Self> {
        let step = match chart.printed_step {
            Some(step) => i32::try_from(step.whole_tenths()?).ok()?,
            None => 1,
        };
        let measures = chart.measures();
        let mut lanes: Vec<Lane> = measures
            .iter()
            .map(|landmark| Lane { place: place(*landmark), sums: Vec::new(), widths: Vec::new() })
            .collect();
        for size in &chart.sizes {
            for ((_, range), lane) in size.girths.iter().zip(&mut lanes) {
                let (low, high) = (i32::try_from(range.low?).ok()?, i32::try_from(range.high?).ok()?);
                lane.sums.push(low + high);
                lane.widths.push(high - low);
            }
        }
        let sizes = chart.sizes.len();
        let gaps = (0..sizes.saturating_sub(1)).filter(|at| lanes.iter().all(|lane| lane.gap(*at).is_some()));
        let gaps = gaps.collect();
        Some(Self { lanes, sizes, step, gaps })
    }

    /// Holds a case against every size; false where a girth is missing.
    pub(super) fn hold(&self, case: &Case, held: &mut Held) -> bool {
        held.girths.clear();
        held.least.clear();
        held.least.resize(self.sizes, i32::MAX);
        for lane in &self.lanes {
            let girth = case.girth(lane.place);
            if girth <= 0 {
                return false;
            }
            let girth = self.rounded(girth);
            held.girths.push(girth);
            for ((least, sum), width) in held.least.iter_mut().zip(&lane.sums).zip(&lane.widths) {
                *least = (*least).min(width - (2 * girth - sum).abs());
            }
        }
        true
    }

    /// Fills the sums of the misses.
    pub(super) fn sum_misses(&self, held: &mut Held) {
        held.sums.clear();
        held.sums.resize(self.sizes, 0);
        for (lane, girth) in self.lanes.iter().zip(&held.girths) {
            for ((total, sum), width) in held.sums.iter_mut().zip(&lane.sums).zip(&lane.widths) {
                *total += ((2 * girth - sum).abs() - width).max(0);
            }
        }
    }

    /// As [`Girth::rounded_to`]: to the nearest step, ties up, at least one step.
    fn rounded(&self, girth: i32) -> i32 {
        if self.step == 1 {
            return girth;
        }
        let steps = ((2 * girth + self.step) / (2 * self.step)).max(1);
        let rounded = steps * self.step;
        if i64::from(rounded) <= Girth::MOST_TENTHS { rounded } else { girth }
    }
}

impl Lane {
    /// Low and high end of a size.
    pub(super) fn ends(&self, size: usize) -> Option<(i32, i32)> {
        let (sum, width) = (*self.sums.get(size)?, *self.widths.get(size)?);
        Some((i32::midpoint(sum, -width), i32::midpoint(sum, width)))
    }

    /// What lies between a size and the next: from the high end of the one to the low end of the other.
    pub(super) fn gap(&self, size: usize) -> Option<(i32, i32)> {
        let (high, low) = (self.ends(size)?.1, self.ends(size + 1)?.0);
        (high <= low).then_some((high, low))
    }
}

impl Lanes {
    /// The least margin of a size, tenths of a millimetre, and its measure; the most distal of several.
    pub(super) fn margin(&self, size: usize, girths: &[i32]) -> Option<(i64, usize)> {
        let all = self.lanes.iter().zip(girths).enumerate();
        let margins = all.filter_map(|(number, (lane, girth))| {
            let (low, high) = lane.ends(size)?;
            Some((i64::from((girth - low).min(high - girth)), number))
        });
        margins.min()
    }

    /// Which of two sizes has the greater least margin relative to the width of its range, exactly.
    pub(super) fn compare(&self, one: usize, other: usize, girths: &[i32]) -> std::cmp::Ordering {
        let less = |a: (i64, i64), b: (i64, i64)| (a.0 * b.1).cmp(&(b.0 * a.1));
        let least = |size: usize| {
            let all = self.lanes.iter().zip(girths);
            let fractions = all.filter_map(|(lane, girth)| {
                let (low, high) = lane.ends(size)?;
                Some((i64::from((girth - low).min(high - girth)), i64::from((high - low).max(1))))
            });
            fractions.min_by(|a, b| less(*a, *b)).unwrap_or((0, 1))
        };
        less(least(one), least(other))
    }
}
