//! Laws that hold for every input.

#![expect(clippy::cast_possible_truncation, reason = "girths below 20 000 tenths of a millimetre")]

use std::fmt::Write as _;

use proptest::prelude::*;
use tapeline::anatomy::{Landmark, Limb};
use tapeline::garment::{Fabric, fabric_file, isotonic, open_fabric};
use tapeline::graduation::{Grade, GraduationBasis, Point, Shares, Value, judge, unlike_fabrics_sd};
use tapeline::pressure::{
    Estimate, Spread, Stacked, WrapPull, estimate_cm, estimate_wrap, laplace_cm, relaxed_for, stack,
};
use tapeline::quantity::{Girth, Position, mmhg, tension_from_newton_per_metre};

use crate::direct::{rules, source};

const SPREAD: Spread = Spread { girth_cm: 0.35, relaxed_cm: 0.3, tension: 0.05 };

/// T = k·e^b in 60 straight pieces up to 250 %.
fn power(k: f64, b: f64) -> Fabric {
    let mut text = String::from("tapeline: fabric/1\nlabel: power\nbasis: derived\ncurve:\n");
    for step in 0..=60_u32 {
        let e = 2.5 * f64::from(step) / 60.0;
        writeln!(text, "  - {{stretch: {:.9} %, tension: {:.9} N/m}}", e * 100.0, k * e.powf(b)).unwrap();
    }
    open_fabric(source("power.yaml", &text)).unwrap()
}

fn pressed(estimate: &Estimate) -> Option<f64> {
    estimate.pressure().map(mmhg)
}

fn close(one: f64, other: f64, relative: f64) -> bool {
    (one - other).abs() <= relative * one.abs().max(other.abs()).max(1e-12)
}

/// The same curve with its stretch as it is and its tension times `factor`.
fn times(fabric: &Fabric, factor: f64) -> Fabric {
    fabric.calibrated(factor, 0.05, "scaled for a test".to_owned())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    // P = 2πT/C (Laplace): at a fixed tension P·C is one number.
    #[test]
    fn at_a_fixed_tension_pressure_times_girth_is_constant(t in 1.0..500.0, c in 5.0..120.0, d in 5.0..120.0) {
        let product = |c: f64| mmhg(laplace_cm(tension_from_newton_per_metre(t), c)) * c;
        prop_assert!(close(product(c), product(d), 1e-13));
    }

    // P ∝ T(e)/C with T convex through 0: T grows at least in proportion to e, and e faster than C.
    #[test]
    fn a_larger_girth_never_lowers_the_pressure_of_a_fixed_garment(
        k in 50.0..800.0, b in 1.0..2.0, c0 in 8.0..60.0, e in 0.02..2.3, more in 0.0..0.15,
    ) {
        let fabric = power(k, b);
        let at = |e: f64| pressed(&estimate_cm(&fabric, 1, c0 * (1.0 + e), c0, SPREAD)).unwrap();
        prop_assert!(at(e + more) >= at(e) * (1.0 - 1e-12));
    }

    // All lengths times s: the stretch stays, the pressure and its parts fall to 1/s.
    #[test]
    fn scaling(k in 50.0..800.0, b in 0.7..1.5, c in 10.0..60.0, e in 0.05..1.5, s in 0.5..2.0) {
        let fabric = power(k, b);
        let c0 = c / (1.0 + e);
        let spread = Spread { girth_cm: 0.35 * s, relaxed_cm: 0.3 * s, tension: 0.05 };
        let (one, scaled) = (estimate_cm(&fabric, 1, c, c0, SPREAD), estimate_cm(&fabric, 1, c * s, c0 * s, spread));
        prop_assert!(close(pressed(&scaled).unwrap() * s, pressed(&one).unwrap(), 1e-9));
        prop_assert!(close(scaled.sd() * s, one.sd(), 1e-6));
    }

    // The inverse and the estimate are one relation.
    #[test]
    fn a_pattern_returns_its_target(
        k in 50.0..800.0, b in 0.7..1.5, c in 10.0..70.0, p in 3.0..60.0, layers in 1_u32..4,
    ) {
        let fabric = power(k, b);
        if let Some(found) = relaxed_for(&fabric, layers, c, p) {
            let back = estimate_cm(&fabric, layers, c, found.relaxed_cm, SPREAD);
            prop_assert!(close(pressed(&back).unwrap(), p, 1e-9), "{:?} {p}", pressed(&back));
            prop_assert!(close(c / (1.0 + found.stretch), found.relaxed_cm, 1e-12));
        }
    }

    // n layers of one fabric press n times; garments over one another add; a scaled curve scales.
    #[test]
    fn layers_add(k in 50.0..800.0, b in 0.7..1.5, c in 10.0..60.0, e in 0.05..1.5, n in 1_u32..5, f in 0.5..2.0) {
        let fabric = power(k, b);
        let c0 = c / (1.0 + e);
        let one = estimate_cm(&fabric, 1, c, c0, SPREAD);
        let many = estimate_cm(&fabric, n, c, c0, SPREAD);
        prop_assert!(close(pressed(&many).unwrap(), f64::from(n) * pressed(&one).unwrap(), 1e-12));
        let other = estimate_cm(&times(&fabric, f), 1, c, c0, SPREAD);
        prop_assert!(close(pressed(&other).unwrap(), f * pressed(&one).unwrap(), 1e-12));
        let both = stack(&[Stacked { estimate: one, fabric: 0 }, Stacked { estimate: other, fabric: 1 }], 0.35);
        prop_assert!(close(pressed(&both).unwrap(), (1.0 + f) * pressed(&one).unwrap(), 1e-12));
    }

    // A verdict by stretch alone says whatever the knit: no curve T ∝ e^b, 0.7 <= b <= 1.5, contradicts it
    // at the measured values.
    #[test]
    fn a_stretch_verdict_is_never_contradicted(
        c in 1500_i64..2500, d in 2000_i64..6000, e in 0.05..1.2, g in 0.05..1.2, b in 0.7..=1.5_f64,
    ) {
        let rules = rules();
        let girth = |tenths: i64| Girth::from_tenths(tenths).unwrap();
        let relaxed = |tenths: i64, e: f64| {
            Girth::from_tenths((f64::from(i32::try_from(tenths).unwrap()) / (1.0 + e)).round() as i64).unwrap()
        };
        let marks = [(Landmark::Ankle, 11, c, relaxed(c, e)), (Landmark::Calf, 31, d, relaxed(d, g))];
        let points: Vec<Point> = marks
            .iter()
            .map(|(landmark, at, c, relaxed)| Point {
                landmark: *landmark,
                at: Position::from_tenths(at * 100).unwrap(),
                value: Value::Stretch { girth: girth(*c), relaxed: *relaxed, sd_girth: 0.35, sd_relaxed: 0.3 },
            })
            .collect();
        let found = judge(&points, GraduationBasis::Stretch, Limb::Leg, Landmark::Calf, &rules);
        let pressure = |(_, _, c, relaxed): &(Landmark, i64, i64, Girth)| {
            let c = girth(*c).cm();
            (c / relaxed.cm() - 1.0).powf(b) / c
        };
        let rises = pressure(&marks[1]) > pressure(&marks[0]);
        match found.verdict.unwrap() {
            Grade::Certain | Grade::Likely => prop_assert!(rises, "{found:?}"),
            Grade::None | Grade::Possible => prop_assert!(!rises, "{found:?}"),
            Grade::Undecided => {}
        }
    }

    // One fabric's error scales both marks and cannot turn the sign; two that cancel turn it with all of
    // their errors.
    #[test]
    fn fabrics_and_the_sign_of_a_rise(p in 1.0..60.0, q in 1.0..60.0, s in 0.01..0.2) {
        let shares = |list: &[f64]| {
            let mut all = Shares::default();
            for (share, mmhg) in all.iter_mut().zip(list) {
                share.mmhg = *mmhg;
                share.sd = s;
            }
            all
        };
        prop_assert!(unlike_fabrics_sd(&shares(&[p]), &shares(&[q]), 1.0) <= 1e-9);
        let turned = unlike_fabrics_sd(&shares(&[0.0, p]), &shares(&[p, 0.0]), 1.0);
        prop_assert!(close(turned, s * p * 2.0_f64.sqrt(), 1e-9));
    }

    // Pooled values never fall, keep the weighted mean, and leave a rising list alone.
    #[test]
    fn isotonic_pooling(values in prop::collection::vec((0.0..1.0_f64, 0.5..4.0_f64), 1..30)) {
        let fitted = isotonic(&values);
        prop_assert!(fitted.windows(2).all(|pair| pair[0] <= pair[1]));
        let weighted = |list: &[f64]| list.iter().zip(&values).map(|(value, (_, weight))| value * weight).sum::<f64>();
        let raw: Vec<f64> = values.iter().map(|(value, _)| *value).collect();
        prop_assert!(close(weighted(&fitted), weighted(&raw), 1e-9));
        let again: Vec<(f64, f64)> = fitted.iter().zip(&values).map(|(value, (_, weight))| (*value, *weight)).collect();
        prop_assert!(isotonic(&again).iter().zip(&fitted).all(|(one, other)| close(*one, *other, 1e-12)));
    }

    // A thick wrap never presses more than the same wrap taken as thin, and thickness 0 is the thin one.
    #[test]
    fn thickness_only_lowers(pull in 1.0..30.0, c in 10.0..70.0, layers in 1.0..5.0, t in 0.001..0.5) {
        let at = |thickness_cm| {
            let wrap = WrapPull { pull_n: pull, width_cm: 10.0, layers, thickness_cm };
            pressed(&estimate_wrap(wrap, c, 0.35, 0.05)).unwrap()
        };
        prop_assert!(at(t) < at(0.0));
        prop_assert!(close(at(1e-9), at(0.0), 1e-6));
    }

    // A fabric written to a file and read again is the same curve to nine places.
    #[test]
    fn a_written_fabric_reads_back(k in 50.0..800.0, b in 0.7..1.5, e in 0.01..2.4) {
        let fabric = times(&power(k, b), 0.93);
        let again = open_fabric(source("again.yaml", &fabric_file(&fabric))).unwrap();
        let (one, other) = (fabric.at(e).unwrap(), again.at(e).unwrap());
        prop_assert!(close(one.newton_per_metre, other.newton_per_metre, 1e-6));
        prop_assert_eq!(again.label, "power (calibrated)");
    }
}
