//! Owns the bound of a design: what each limb is worth to the sizes that could take it.

use super::spot::{SCALE, Spot};

/// Steps in which the values are settled on the places known so far (house rule).
pub(super) const STEPS: usize = 300;

/// After so many steps without gain the steps grow shorter (house rule).
const PATIENCE: usize = 15;

/// By this factor (house rule).
const SLOWER: f64 = 0.6;

/// Places lighter than the heaviest by up to this part of it share the step (house rule: one place alone makes the
/// values swing).
const NEAR: f64 = 0.02;

/// A value for each limb, from 0 to its whole weight. Of any K sizes no more is served than what the limbs are
/// worth by themselves and K times the most that one size can take of the rest (derived: linear relaxation, its
/// dual).
pub(super) struct Prices {
    /// The part of each limb that sizes compete for.
    pub(super) rest: Vec<i64>,
}

impl Prices {
    /// What the limbs are worth by themselves.
    pub(super) fn alone(&self, counts: &[i64]) -> i64 {
        self.rest.iter().zip(counts).map(|(rest, count)| SCALE * count - rest).sum()
    }

    /// Settles the values on the places known: the bound over them as low as some steps bring it, aiming at what
    /// is served already.
    #[expect(
        clippy::cast_precision_loss,
        clippy::cast_possible_truncation,
        reason = "weights far below 2^53"
    )]
    pub(super) fn settle(
        &mut self,
        counts: &[i64],
        spots: &[Spot],
        size_count: usize,
        served: i64,
        steps: usize,
    ) {
        let whole: Vec<f64> = counts.iter().map(|count| (SCALE * count) as f64).collect();
        let mut rest: Vec<f64> = self.rest.iter().map(|rest| *rest as f64).collect();
        let k = size_count as f64;
        let target = (SCALE * served) as f64;
        let mut best = (f64::INFINITY, rest.clone());
        let mut scale = 1.0;
        let mut passes = 0;
        for _ in 0..steps {
            let of = |spot: &Spot| spot.takes.iter().filter_map(|id| rest.get(*id)).sum::<f64>();
            let weights: Vec<f64> = spots.iter().map(of).collect();
            let most = weights.iter().copied().fold(0.0, f64::max);
            let alone: f64 = whole.iter().zip(&rest).map(|(whole, rest)| whole - rest).sum();
            let bound = alone + k * most;
            if bound < best.0 - 1e-9 {
                best = (bound, rest.clone());
                passes = 0;
            } else {
                passes += 1;
                if passes > PATIENCE {
                    scale *= SLOWER;
                    passes = 0;
                }
            }
            let over = bound - target;
            if over <= 0.0 {
                break;
            }
            // The K sizes are shared out among the places near the heaviest, the nearer the more.
            let reach = (NEAR * scale * most).max(f64::MIN_POSITIVE);
            let near = |weight: f64| (1.0 - (most - weight) / reach).max(0.0);
            let shares: f64 = weights.iter().map(|weight| near(*weight)).sum();
            // The bound falls where a rest grows that they cover less than once, or shrinks where more than once.
            let mut slopes = vec![-1.0; rest.len()];
            for (spot, weight) in spots.iter().zip(&weights).filter(|(_, weight)| near(**weight) > 0.0) {
                let share = k * near(*weight) / shares;
                for id in &spot.takes {
                    if let Some(slope) = slopes.get_mut(*id) {
                        *slope += share;
                    }
                }
            }
            let at_end = |rest: f64, whole: f64, slope: f64| {
                (rest >= whole && slope < 0.0) || (rest <= 0.0 && slope > 0.0)
            };
            for ((slope, rest), whole) in slopes.iter_mut().zip(&rest).zip(&whole) {
                if at_end(*rest, *whole, *slope) {
                    *slope = 0.0;
                }
            }
            let square: f64 = slopes.iter().map(|slope| slope * slope).sum();
            if square <= 0.0 {
                break;
            }
            let step = scale * over / square;
            for ((rest, slope), whole) in rest.iter_mut().zip(&slopes).zip(&whole) {
                *rest = (*rest - step * slope).clamp(0.0, *whole);
            }
        }
        self.rest = best.1.iter().map(|rest| rest.round() as i64).collect();
    }
}
