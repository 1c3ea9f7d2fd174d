//! Owns Φ by a table, for caseloads of a million limbs.

use std::sync::LazyLock;

use super::phi;

/// Panels of one unit (house rule: the cubic between them is then off by less than 1e-10).
const PANELS: u32 = 128;

/// How far the table reaches to either side; beyond it Φ is 0 or 1 to within 1e-16 (derived).
const REACH: f64 = 8.25;

/// Φ and its slope over one panel, at every node.
static NODES: LazyLock<Vec<(f64, f64)>> = LazyLock::new(|| {
    let panels = f64::from(PANELS);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few thousand nodes")]
    let count = (2.0 * REACH * panels) as u32 + 2;
    (0..count)
        .map(|number| {
            let z = f64::from(number) / panels - REACH;
            let density = (-0.5 * z * z).exp() / std::f64::consts::TAU.sqrt();
            (phi(z), density / panels)
        })
        .collect()
});

/// Φ(z) to within 1e-10, some ten times faster than [`phi`].
///
/// Source: cubic Hermite interpolation (derived); a test holds the two against each other.
pub fn phi_quick(z: f64) -> f64 {
    let place = (z + REACH) * f64::from(PANELS);
    if place <= 0.0 {
        return if z.is_nan() { z } else { 0.0 };
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "above 0, and saturating")]
    let at = place as usize;
    let Some([(low, rise), (high, fall)]) = NODES.get(at..at.saturating_add(2)) else { return 1.0 };
    #[expect(clippy::cast_precision_loss, reason = "a node's number is a few thousand at most")]
    let t = place - at as f64;
    let step = high - low;
    let (a, b) = (rise - step, step - fall);
    low + t * (step + (1.0 - t) * ((1.0 - t) * a + t * b))
}
