//! Owns the order of a chart's sizes: a list that goes from large to small throughout is turned round.

use super::Size;
use crate::quantity::{Girth, Range};

/// The sizes small to large, and whether they stood the other way round. Sizes that share their most distal range (slim
/// and wide ones) are of one step; the list is turned where every step is smaller than the one before it, at every
/// girth. Any other order is left as it is: what is out of order in it is a fault of the chart.
pub(super) fn small_to_large(sizes: Vec<Size>) -> (Vec<Size>, bool) {
    let mut steps: Vec<Vec<Size>> = Vec::new();
    for size in sizes {
        match steps.last_mut() {
            Some(step) if step.first().is_some_and(|one| distal(one) == distal(&size)) => step.push(size),
            _ => steps.push(vec![size]),
        }
    }
    let falls = |pair: &[Vec<Size>]| match pair {
        [large, small] => {
            let ranked = small.iter().enumerate();
            let mut ranked =
                ranked.map(|(rank, one)| large.get(rank).or(large.last()).map(|other| (other, one)));
            ranked.all(|pair| pair.is_some_and(|(large, small)| below(small, large)))
        }
        _ => false,
    };
    if steps.len() < 2 || !steps.windows(2).all(falls) {
        return (steps.into_iter().flatten().collect(), false);
    }
    let upward = |mut step: Vec<Size>| {
        if step.windows(2).all(|pair| matches!(pair, [one, other] if below(other, one))) {
            step.reverse();
        }
        step
    };
    (steps.into_iter().rev().flat_map(upward).collect(), true)
}

fn distal(size: &Size) -> Option<Range> {
    size.girths.first().map(|(_, range)| *range)
}

/// Whether a size is smaller than another: at no girth larger, and somewhere smaller.
fn below(small: &Size, large: &Size) -> bool {
    let ends = |range: Range| (range.low.unwrap_or(0), range.high.unwrap_or(Girth::MOST_TENTHS));
    let pairs =
        || small.girths.iter().zip(&large.girths).map(|((_, one), (_, other))| (ends(*one), ends(*other)));
    pairs().all(|(one, other)| one.0 <= other.0 && one.1 <= other.1)
        && pairs().any(|(one, other)| one != other)
}
