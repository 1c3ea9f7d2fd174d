//! Owns the distance of a limb from the usual one.
//!
//! Source: Mahalanobis distance in log girth; mean and covariance of the rules, derived from 507 adults
//! (Heinz et al. 2003, J Stat Educ 11(2)), widened by the error of the tape.

use super::girths::Girths;
use super::neighbours::beside_neighbours;
use crate::rules::{Nearness, NumberId, Rules};

/// Distance of the limb's log girths (cm) from the usual limb's, over the landmarks that both have, and of
/// its other marks from their neighbours; 0 where nothing can be compared.
pub(super) fn distance(girths: &Girths, rules: &Rules) -> f64 {
    let surveyed = rules
        .nearness
        .iter()
        .find_map(|usual| squared(girths, usual, rules.number(NumberId::TapeSd)))
        .unwrap_or_default();
    let others: f64 = beside_neighbours(girths, rules).iter().map(|one| one.away().powi(2)).sum();
    (surveyed + others).sqrt()
}

fn squared(girths: &Girths, usual: &Nearness, tape_cm: f64) -> Option<f64> {
    let shared: Vec<(usize, f64, f64)> = usual
        .landmarks
        .iter()
        .enumerate()
        .filter_map(|(at, landmark)| {
            let cm = girths.at(*landmark)?.cm();
            let mean = usual.mean.get(at)?;
            Some((at, cm.ln() - mean, (tape_cm / mean.exp()).powi(2)))
        })
        .collect();
    if shared.is_empty() {
        return None;
    }
    let away: Vec<f64> = shared.iter().map(|(_, away, _)| *away).collect();
    let rows = shared.iter().map(|(row, _, tape)| {
        let cells = usual.cov.get(*row);
        let of = |column: usize| {
            let cell = cells.and_then(|cells| cells.get(column)).copied().unwrap_or_default();
            if column == *row { cell + tape } else { cell }
        };
        shared.iter().map(|(column, _, _)| of(*column)).collect()
    });
    let solved = solve(rows.collect(), away.clone());
    Some(away.iter().zip(&solved).map(|(one, other)| one * other).sum::<f64>().max(0.0))
}

/// Solves a small positive definite system by elimination; the rows are few.
fn solve(mut rows: Vec<Vec<f64>>, mut right: Vec<f64>) -> Vec<f64> {
    let size = right.len();
    for pivot in 0..size {
        let Some(top) = rows.get(pivot).cloned() else { break };
        let scale = top.get(pivot).copied().unwrap_or(1.0);
        let value = right.get(pivot).copied().unwrap_or_default();
        for other in (0..size).filter(|other| *other != pivot) {
            let Some(row) = rows.get_mut(other) else { continue };
            let factor = row.get(pivot).copied().unwrap_or_default() / scale;
            for (cell, above) in row.iter_mut().zip(&top) {
                *cell -= factor * above;
            }
            if let Some(cell) = right.get_mut(other) {
                *cell -= factor * value;
            }
        }
    }
    let diagonal = |at: usize| rows.get(at).and_then(|row| row.get(at)).copied().unwrap_or(1.0);
    right.iter().enumerate().map(|(at, value)| value / diagonal(at)).collect()
}
