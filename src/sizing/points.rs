//! Owns evenly spread points of the standard normal distribution in several dimensions.

use std::sync::OnceLock;

/// Points of one average (house rule: it is then good to 0.01, and a few tenths of a millisecond long).
pub(super) const POINTS: u32 = 4096;

/// Most dimensions whose points are kept.
const KEPT: usize = 10;

/// Points by dimension, worked out once.
static NORMALS: [OnceLock<Vec<f64>>; KEPT] = [const { OnceLock::new() }; KEPT];

/// The points of `dimensions` (below 10) as standard normal values, point by point; none beyond.
pub(super) fn normals(dimensions: usize) -> Option<&'static [f64]> {
    let kept = NORMALS.get(dimensions)?;
    Some(kept.get_or_init(|| {
        let steps = steps(dimensions);
        (0..POINTS).flat_map(|number| steps.iter().map(move |step| quantile(place(number, *step)))).collect()
    }))
}

/// The generalised golden ratio of `dimensions`: the root above 1 of x^(d+1) = x + 1.
///
/// Source: additive recurrence with that root, whose points are spread evenly (Kronecker; derived).
fn ratio(dimensions: usize) -> f64 {
    let power = 1.0 / f64::from(u32::try_from(dimensions + 1).unwrap_or(u32::MAX));
    (0..60).fold(2.0_f64, |root, _| (1.0 + root).powf(power))
}

/// The steps of each dimension.
fn steps(dimensions: usize) -> Vec<f64> {
    let root = ratio(dimensions);
    (1..=dimensions).map(|dimension| root.powi(-i32::try_from(dimension).unwrap_or(i32::MAX))).collect()
}

/// Coordinate of point `number` along a dimension with `step`, strictly between 0 and 1.
fn place(number: u32, step: f64) -> f64 {
    (0.5 + f64::from(number + 1) * step).fract().clamp(1e-12, 1.0 - 1e-12)
}

/// Standard normal quantile, relative error below 1.2e-9.
///
/// Source: P. Acklam's rational approximation (memory; held by a test against Φ).
fn quantile(share: f64) -> f64 {
    const A: [f64; 6] = [
        -3.969_683_028_665_376e1,
        2.209_460_984_245_205e2,
        -2.759_285_104_469_687e2,
        1.383_577_518_672_69e2,
        -3.066_479_806_614_716e1,
        2.506_628_277_459_239,
    ];
    const B: [f64; 6] = [
        -5.447_609_879_822_406e1,
        1.615_858_368_580_409e2,
        -1.556_989_798_598_866e2,
        6.680_131_188_771_972e1,
        -1.328_068_155_288_572e1,
        1.0,
    ];
    const C: [f64; 6] = [
        -7.784_894_002_430_293e-3,
        -3.223_964_580_411_365e-1,
        -2.400_758_277_161_838,
        -2.549_732_539_343_734,
        4.374_664_141_464_968,
        2.938_163_982_698_783,
    ];
    const D: [f64; 5] = [
        7.784_695_709_041_462e-3,
        3.224_671_290_700_398e-1,
        2.445_134_137_142_996,
        3.754_408_661_907_416,
        1.0,
    ];
    const TAIL: f64 = 0.024_25;
    let horner = |terms: &[f64], at: f64| terms.iter().fold(0.0, |sum, term| sum * at + term);
    let in_tail = |share: f64| {
        let root = (-2.0 * share.ln()).sqrt();
        horner(&C, root) / horner(&D, root)
    };
    if share < TAIL {
        in_tail(share)
    } else if share > 1.0 - TAIL {
        -in_tail(1.0 - share)
    } else {
        let centred = share - 0.5;
        let square = centred * centred;
        centred * horner(&A, square) / horner(&B, square)
    }
}
