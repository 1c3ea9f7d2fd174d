//! Owns the normal value inside an integral: its upper tail and its density, read from one table.
//!
//! Source: Taylor's series about the nearest node (derived); off by less than 1e-12, which a test holds against
//! erfc.

use std::f64::consts::TAU;
use std::sync::LazyLock;

use super::rise::REACH;
use crate::quantity::phi;

/// Nodes of one unit (house rule: four terms after the first are then good to 1e-12).
const PER_UNIT: f64 = 64.0;

/// Upper tail and density at every node from 0 to [`REACH`].
static NODES: LazyLock<Vec<(f64, f64)>> = LazyLock::new(|| {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few hundred nodes")]
    let last = (REACH * PER_UNIT) as u32;
    (0..=last)
        .map(|number| {
            let z = f64::from(number) / PER_UNIT;
            (phi(-z), (-0.5 * z * z).exp() / TAU.sqrt())
        })
        .collect()
});

/// The chance of a standard normal value above `z`, and its density there; 0 or 1, and 0, beyond [`REACH`].
pub(super) fn tail_and_density(z: f64) -> (f64, f64) {
    let far = z.abs();
    let above = |tail: f64| if z < 0.0 { 1.0 - tail } else { tail };
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "not below 0, and saturating"
    )]
    let at = (far * PER_UNIT + 0.5) as usize;
    let Some((tail, density)) = NODES.get(at) else { return (above(0.0), 0.0) };
    #[expect(clippy::cast_precision_loss, reason = "a node's number is a few hundred at most")]
    let node = at as f64 / PER_UNIT;
    let (d, square) = (far - node, node * node);
    // The derivatives of the density over the density itself.
    let (second, third) = (square - 1.0, node * (3.0 - square));
    let fourth = square * (square - 6.0) + 3.0;
    let series = 1.0 + d * (-node + d * (second / 2.0 + d * (third / 6.0 + d * fourth / 24.0)));
    let under = d * (1.0 + d * (-node / 2.0 + d * (second / 6.0 + d * (third / 24.0 + d * fourth / 120.0))));
    (above(tail - density * under), density * series)
}
