//! Owns the trend over all marks and the comparison of the two ends.

use super::point::Point;
use crate::quantity::phi;

/// T = Φ(β√S): the chance that the weighted line through the points rises (derived).
pub(super) fn trend(points: &[Point]) -> f64 {
    let weight = |point: &Point| 1.0 / (point.s * point.s);
    let total: f64 = points.iter().map(weight).sum();
    let middle = points.iter().map(|point| weight(point) * point.x).sum::<f64>() / total;
    let square: f64 = points.iter().map(|point| weight(point) * (point.x - middle).powi(2)).sum();
    let cross: f64 = points.iter().map(|point| weight(point) * (point.x - middle) * point.y).sum();
    if square > 0.0 { phi(cross / square.sqrt()) } else { 0.5 }
}

/// `E = Φ((y_n − y_1)/√(s_1² + s_n²))`: the chance that the last point lies above the first (derived).
pub(super) fn ends(points: &[Point]) -> f64 {
    match (points.first(), points.last()) {
        (Some(first), Some(last)) => phi((last.y - first.y) / first.s.hypot(last.s)),
        _ => 0.5,
    }
}
