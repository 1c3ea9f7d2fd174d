//! Owns the chance that some mark lies above one nearer the hand or foot.

use std::sync::LazyLock;

use super::nodes::{LEGENDRE_8, running};
use super::normal::tail_and_density;
use super::point::Point;
use crate::quantity::phi;

/// Integrals of the Lagrange polynomials over the nodes of a panel.
static RUNNING: LazyLock<[[f64; 8]; 8]> = LazyLock::new(running);

/// How many SDs of a value are looked at (derived: beyond nine lie 1e-19 of it).
pub(super) const REACH: f64 = 9.0;

/// The chance that of independent normal values, given as mean and SD above 0, some later one lies at
/// least `delta` above some earlier one.
///
/// Runs over the values from the last to the first with B(m) = chance of such a rise when the least value
/// so far is m: `B_j(m) = P(θ_j ≥ m + δ) + P(m ≤ θ_j < m + δ)·B_{j+1}(m) + ∫ below m of φ_j·B_{j+1}`
/// (derived). Panels are at most two of the smallest SDs wide; good to about 1e-11.
pub fn rise_somewhere(values: &[(f64, f64)], delta: f64) -> f64 {
    let (Some((first, rest)), true) = (values.split_first(), values.len() > 1) else { return 0.0 };
    let least = values.iter().map(|(_, s)| *s).fold(f64::INFINITY, f64::min);
    let low = values.iter().map(|(y, s)| y - REACH * s).fold(f64::INFINITY, f64::min);
    let high = first.0 + REACH * first.1;
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a count of panels, positive and small"
    )]
    let count = (((high - low) / (2.0 * least)).ceil().max(1.0)) as usize;
    #[expect(clippy::cast_precision_loss, reason = "a count of panels is far below 2^52")]
    let half = (high - low) / (count as f64) / 2.0;
    // Distal ones that the last value is held against: B of the values after it is 0.
    let mut later: Vec<[f64; 8]> = vec![[0.0; 8]; count];
    for value in rest.iter().rev() {
        step(*value, delta, (low, half), &mut later);
    }
    let mut sum = 0.0;
    let mut start = low;
    for panel in &later {
        for ((node, weight), b) in LEGENDRE_8.iter().zip(panel) {
            sum += half * weight * density(*first, start + half * (node + 1.0)) * b;
        }
        start += 2.0 * half;
    }
    sum.clamp(0.0, 1.0)
}

/// From `B_{j+1}` on the nodes to `B_j`.
fn step(value: (f64, f64), delta: f64, (low, half): (f64, f64), later: &mut [[f64; 8]]) {
    let (y, s) = value;
    let table = &*RUNNING;
    let mut start = low;
    let mut before = 0.0;
    for panel in later {
        let centre = start + half;
        let near = (centre - y).abs() - half <= REACH * s;
        let mut weighted = [0.0; 8];
        let mut above = [(0.0, 0.0); 8];
        for (((slot, above), (node, _)), b) in
            weighted.iter_mut().zip(&mut above).zip(LEGENDRE_8).zip(panel.iter())
        {
            let z = (centre + half * node - y) / s;
            let (tail, density) = tail_and_density(z);
            *above = (tail, tail_and_density(z + delta / s).0);
            *slot = if near { density / s * b } else { 0.0 };
        }
        for ((b, (tail, over)), row) in panel.iter_mut().zip(above).zip(table) {
            let inside: f64 =
                if near { row.iter().zip(&weighted).map(|(one, other)| one * other).sum() } else { 0.0 };
            let level = (tail - over).max(0.0) * *b;
            *b = over + level + before + half * inside;
        }
        if near {
            before +=
                half * LEGENDRE_8.iter().zip(&weighted).map(|((_, weight), one)| weight * one).sum::<f64>();
        }
        start += 2.0 * half;
    }
}

/// Density of a normal value at a place.
fn density((y, s): (f64, f64), place: f64) -> f64 {
    tail_and_density((place - y) / s).1 / s
}

/// A over the points of one assumption.
pub(super) fn of_points(points: &[Point], delta: f64) -> f64 {
    let values: Vec<(f64, f64)> = points.iter().map(|point| (point.y, point.s)).collect();
    rise_somewhere(&values, delta)
}

/// U: the mean A of an even fall to `end` measured with these marks (derived: the error then enters twice).
pub(super) fn usual(points: &[Point], end: f64, delta: f64) -> f64 {
    let (Some(first), Some(last)) = (points.first(), points.last()) else { return 0.0 };
    let length = last.x - first.x;
    let values: Vec<(f64, f64)> = points
        .iter()
        .map(|point| {
            let share = if length > 0.0 { (point.x - first.x) / length } else { 0.0 };
            ((1.0 - (1.0 - end) * share).ln(), std::f64::consts::SQRT_2 * point.s)
        })
        .collect();
    rise_somewhere(&values, delta)
}

/// The chance that a later point lies above an earlier one by `delta`.
pub(super) fn pair(distal: Point, proximal: Point, delta: f64) -> f64 {
    phi((proximal.y - distal.y - delta) / distal.s.hypot(proximal.s))
}
