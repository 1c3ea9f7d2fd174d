//! Owns the distance of a limb from the usual one.
//!
//! Source: Mahalanobis distance in log girth; mean and covariance of the rules, derived from 507
//! adults (Heinz et al. 2003, J Stat Educ 11(2)).

use super::slips::Girths;
use crate::rules::{Nearness, Rules};

/// Mahalanobis distance of the limb's log girths (cm) from the usual limb's, over the landmarks that
/// both have; 0 where they share none.
pub(super) fn distance(girths: &Girths, rules: &Rules) -> f64 {
    let of = |usual: &Nearness| {
        let shared: Vec<(usize, f64)> = usual
            .landmarks
            .iter()
            .enumerate()
            .filter_map(|(at, landmark)| {
                let (_, tenths) = girths.iter().find(|(one, _)| one == &Some(*landmark))?;
                let cm = f64::from(i32::try_from(*tenths).ok()?) / 100.0;
                Some((at, cm.ln() - usual.mean.get(at)?))
            })
            .collect();
        (!shared.is_empty()).then(|| {
            let away: Vec<f64> = shared.iter().map(|(_, away)| *away).collect();
            let rows = shared.iter().map(|(row, _)| {
                let row = usual.cov.get(*row);
                shared
                    .iter()
                    .map(|(col, _)| row.and_then(|row| row.get(*col)).copied().unwrap_or_default())
                    .collect()
            });
            let solved = solve(rows.collect(), away.clone());
            away.iter().zip(&solved).map(|(one, other)| one * other).sum::<f64>().max(0.0).sqrt()
        })
    };
    rules.nearness.iter().find_map(of).unwrap_or_default()
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
    right
        .iter()
        .enumerate()
        .map(|(at, value)| value / rows.get(at).and_then(|row| row.get(at)).copied().unwrap_or(1.0))
        .collect()
}
