//! Owns the bringing down of the bound of a design: values of the limbs settled on the places known, new places by
//! those values, and the proof that no other place takes more.
//!
//! Source: column generation for the linear relaxation of the greatest cover; each round's bound holds by itself.

use super::ceiling::ceiling;
use super::grid::Grid;
use super::placing::Placing;
use super::price::{Prices, STEPS};
use super::spot::SCALE;

/// Steps that the settling may take, a step being a look at a limb or a girth (house rule: a second or two).
const SETTLING: u64 = 1_500_000_000;

/// Steps that the proofs may take (house rule: some three seconds).
const PROVING: u64 = 2_400_000_000;

/// Most rounds (house rule: later ones gain little).
const ROUNDS: usize = 100;

/// At the latest after so many rounds a bound is proven (house rule), so that there always is one.
const BETWEEN_PROOFS: usize = 10;

/// The part of what is left that a proof by values that are not settled may take (house rule).
const UNSETTLED: u64 = 16;

/// The parts of the heaviest known place by which a proof may stay above it, one after the other (house rule).
const SLACKS: [i64; 5] = [50, 200, 400, 800, 1600];

/// Most limbs that the places kept to settle the values on take, one by one (house rule).
const MOST_TAKEN: usize = 150_000;

/// The least bound found on what `count` sizes serve, and the values that give it; not below `served`, which is
/// served already.
pub(super) fn bring_down(
    grid: &Grid,
    counts: &[i64],
    placing: &mut Placing<'_>,
    (count, served): (usize, i64),
) -> (i64, Prices) {
    let many = i64::try_from(count).unwrap_or(i64::MAX);
    let whole = || Prices { rest: counts.iter().map(|count| SCALE * count).collect() };
    let (mut prices, mut kept, mut least) = (whole(), whole(), counts.iter().sum::<i64>());
    let whole_count = least;
    let (mut settling, mut proving) = (SETTLING, PROVING);
    let mut slacks = SLACKS.iter().copied();
    let mut slack = slacks.next();
    let mut since_proof = 0;
    for _ in 0..ROUNDS {
        let Some(part) = slack else { break };
        if least <= served || settling == 0 || proving == 0 {
            break;
        }
        placing.trim(&prices.rest, MOST_TAKEN);
        settling = settling.saturating_sub(u64::try_from(placing.taken() * STEPS).unwrap_or(u64::MAX));
        prices.settle(counts, placing.pool(), count, served, STEPS);
        let weights = placing.pool().iter().map(|spot| spot.weight(&prices.rest));
        let known = weights.max().unwrap_or_default();
        let top = placing.add_by(&prices.rest, known);
        since_proof += 1;
        let is_near = top - known <= known / part;
        if !is_near && since_proof < BETWEEN_PROOFS && settling > 0 {
            continue;
        }
        since_proof = 0;
        let top = top.max(known);
        // A first proof leaves as much for later values as it takes, one by values that are not settled far more.
        let share = match (is_near || settling == 0, least == whole_count) {
            (true, true) => proving.div_ceil(2),
            (true, false) => proving,
            (false, _) => proving.div_ceil(UNSETTLED),
        };
        let mut own = share;
        let floor = top + top / part;
        let found = ceiling(grid, &prices.rest, floor, &mut own);
        proving -= share - own;
        let bound = (prices.alone(counts) + many.saturating_mul(found.most)) / SCALE;
        if bound < least {
            (least, kept) = (bound, Prices { rest: prices.rest.clone() });
        }
        match found.place {
            Some(place) => {
                placing.push(place);
            }
            // One that did not come to its end is as good as they get.
            None if found.most > floor && (is_near || settling == 0) => break,
            None if is_near => slack = slacks.next(),
            None => {}
        }
    }
    (least.max(served), kept)
}
