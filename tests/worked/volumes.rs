//! Limb volumes.

use std::f64::consts::PI;

use tapeline::volume::{Station, disc, frustum};

use crate::direct::{ARM_ANSWERS, ARM_HEAD, figure, leg, listed, near, report};

fn stations(list: &[(f64, f64)], sd_cm: f64) -> Vec<Station> {
    list.iter().map(|(at_cm, girth_cm)| Station { at_cm: *at_cm, girth_cm: *girth_cm, sd_cm }).collect()
}

fn cone(first: f64, second: f64, height: f64) -> f64 {
    frustum(&stations(&[(0.0, first), (height, second)], 0.0)).unwrap().ml
}

/// Girths at an even spacing from zero.
fn even(girths: &[f64], spacing: f64) -> Vec<(f64, f64)> {
    (0_u8..).zip(girths).map(|(at, girth)| (f64::from(at) * spacing, *girth)).collect()
}

#[test]
fn cut_cones() {
    // V = h(C1² + C1C2 + C2²)/12π, exact for a straight-sided limb (derived).
    near(cone(20.0, 20.0, 4.0), 127.323_954_47, 1e-10);
    near(cone(20.0, 24.0, 4.0), 154.486_398_09, 1e-10);
    near(cone(30.0, 40.0, 10.0), 981.455_482_48, 1e-10);
    near(cone(6.0 * PI, 10.0 * PI, 6.0), 98.0 * PI, 1e-12);
    near(cone(16.0 * PI, 10.0 * PI, 12.0), 516.0 * PI, 1e-12);
    near(cone(0.0, 12.0 * PI, 10.0), 120.0 * PI, 1e-12);
}

#[test]
fn a_bulged_limb() {
    // C = 24 + 4 sin(πx/40) over 40 cm, exact ∫C²/4π = 2248.00308050 mL (derived): cut cones at 4 and 10 cm
    // fall short by 0.161 and 1.010 %, discs at 4 cm come to 2249.6077.
    let girth = |x: f64| 24.0 + 4.0 * (PI * x / 40.0).sin();
    let every = |step: f64, from: f64| -> Vec<(f64, f64)> {
        (0_u8..=40)
            .map(|n| from + f64::from(n) * step)
            .take_while(|x| *x <= 40.0)
            .map(|x| (x, girth(x)))
            .collect()
    };
    let exact = 2_248.003_080_50;
    let four = frustum(&stations(&every(4.0, 0.0), 0.0)).unwrap().ml;
    let ten = frustum(&stations(&every(10.0, 0.0), 0.0)).unwrap().ml;
    assert!((four - 2244.3824).abs() < 5e-5 && (100.0 * (four / exact - 1.0) + 0.161).abs() < 5e-4, "{four}");
    assert!((ten - 2225.3082).abs() < 5e-5 && (100.0 * (ten / exact - 1.0) + 1.010).abs() < 5e-4, "{ten}");
    let discs = disc(&stations(&every(4.0, 2.0), 0.0)).unwrap().ml;
    assert!((discs - 2249.6077).abs() < 5e-5, "{discs}");
}

const U1: [f64; 11] = [15.8, 16.6, 18.3, 20.4, 22.3, 23.6, 24.0, 24.6, 25.9, 27.2, 28.5];
const A1: [f64; 11] = [17.0, 18.2, 20.5, 23.0, 25.2, 26.6, 27.0, 27.5, 28.6, 29.6, 30.5];
const U2: [f64; 11] = [15.8, 16.6, 18.2, 20.3, 22.2, 23.5, 23.9, 24.5, 25.8, 27.1, 28.4];
const A2: [f64; 11] = [16.4, 17.4, 19.3, 21.6, 23.7, 25.0, 25.4, 26.0, 27.2, 28.4, 29.5];

/// A record of both arms, the measured one affected.
fn both_arms(measured: &[f64], other: &[f64], more: &str) -> String {
    let list = |girths: &[f64]| -> Vec<String> {
        (0..)
            .zip(girths)
            .map(|(n, girth)| {
                let mark = if n == 0 { "landmark: wrist, " } else { "" };
                format!("{mark}at: {}, girth: {girth}", 4 * n)
            })
            .collect()
    };
    let lines = |girths: &[f64]| {
        let list = list(girths);
        listed(&list.iter().map(String::as_str).collect::<Vec<_>>())
    };
    let other = lines(other).replace("  - ", "    - ").replace("marks:", "  marks:");
    format!("{ARM_HEAD}{ARM_ANSWERS}{more}{}other_limb:\n{other}", lines(measured))
}

#[test]
fn an_arm_at_two_visits() {
    // Invented arm, 11 girths at 4 cm (derived): cut cones and discs of each list.
    for (girths, cones, discs) in [
        (U1, 1_655.363_136, 1_825.367_141),
        (A1, 2_039.798_718, 2_235.079_711),
        (U2, 1_642.640_290, 1_811.721_196),
        (A2, 1_834.174_775, 2_016.579_073),
    ] {
        let list = stations(&even(&girths, 4.0), 0.2);
        near(frustum(&list).unwrap().ml, cones, 3e-10);
        near(disc(&list).unwrap().ml, discs, 3e-10);
    }
    // SD of the first for a tape SD of 0.2 cm (derived): 8.945 mL.
    let sd = frustum(&stations(&even(&U1, 4.0), 0.2)).unwrap().variance.sqrt();
    assert!((sd - 8.945).abs() < 5e-4, "{sd}");
}

#[test]
fn the_excess_of_an_arm() {
    // Excess at visits 1 and 2 (derived): 384.435582 mL, 23.223640 %; 191.534486 mL, 11.660160 %.
    for (affected, other, ml, percent) in
        [(A1, U1, 384.435_582, 23.223_640), (A2, U2, 191.534_486, 11.660_160)]
    {
        let made = report(&both_arms(&affected, &other, ""), &[]);
        near(figure(&made, "/volume/excess_ml"), ml, 5e-9);
        near(figure(&made, "/volume/excess_percent"), percent, 5e-8);
        assert_eq!(figure(&made, "/volume/spacing_cm"), 4.0);
        assert_eq!(made["volume"]["method"], "frustum");
    }
    let made = report(&both_arms(&A1, &U1, "volume_method: disc\n"), &[]);
    near(figure(&made, "/volume/measured_ml"), 2_235.079_711, 3e-10);
    near(figure(&made, "/volume/other_ml"), 1_825.367_141, 3e-10);
    assert_eq!(made["volume"]["method"], "disc");
    // The SD of the excess: both limbs' tapes are independent, each mark 0.35 cm (derived): the SD of U1 at
    // 0.2 cm scales to 0.35 cm, A1's is worked out by V1's own slopes here.
    let variance = |girths: &[f64; 11]| -> f64 {
        let slope = |at: usize| {
            let part = |other: Option<&f64>| {
                other.map_or(0.0, |other| 4.0 * (2.0 * girths[at] + other) / (12.0 * PI))
            };
            part(at.checked_sub(1).and_then(|below| girths.get(below))) + part(girths.get(at + 1))
        };
        (0..11).map(|at| (0.35 * slope(at)).powi(2)).sum()
    };
    let made = report(&both_arms(&A1, &U1, ""), &[]);
    near(figure(&made, "/volume/sd_ml"), (variance(&A1) + variance(&U1)).sqrt(), 1e-12);
}

#[test]
fn both_or_no_side_affected_has_no_excess() {
    for affected in ["both", "none"] {
        let text = both_arms(&A1, &U1, "").replace("affected: left", &format!("affected: {affected}"));
        let made = report(&text, &[]);
        assert!(made["volume"]["excess_ml"].is_null() && made["volume"]["excess_percent"].is_null());
        assert_eq!(made["volume"]["severity"], serde_json::json!([]));
        near(figure(&made, "/volume/measured_ml"), 2_039.798_718, 3e-10);
    }
    // The other side affected: excess is affected minus not affected, in % of the latter (published:
    // Cochrane CD003475), whichever was measured first.
    let text = both_arms(&U1, &A1, "").replace("affected: left", "affected: right");
    let made = report(&text, &[]);
    near(figure(&made, "/volume/excess_ml"), 384.435_582, 5e-9);
    near(figure(&made, "/volume/excess_percent"), 23.223_640, 5e-8);
}

fn grades(percent_tenths: u32) -> Vec<(String, String)> {
    // A cylinder of 30 cm girth against one of 30·√(1 + excess): volumes in the wanted proportion.
    let excess = f64::from(percent_tenths) / 1000.0;
    let thick = (30.0 * (1.0 + excess).sqrt() * 100.0).round() / 100.0;
    let made = report(&both_arms(&[thick; 11], &[30.0; 11], ""), &[]);
    let list = made["volume"]["severity"].as_array().unwrap().iter();
    let text = |one: &serde_json::Value, key: &str| one[key].as_str().unwrap().to_owned();
    list.map(|one| (text(one, "set"), text(one, "grade"))).collect()
}

#[test]
fn grades_of_an_excess() {
    // ISL consensus: minimal >5–<20, moderate 20–40, severe >40 % (published >40; the rest memory); CTCAE
    // v3: 1 5–10, 2 >10–30, 3 >30 % (published); 200 mL, 10 %, 2 cm (published: Armer & Stewart 2005).
    let of = |set: &str, tenths: u32| {
        grades(tenths).into_iter().find(|(name, _)| name == set).map(|(_, grade)| grade).unwrap()
    };
    for (tenths, isl, ctcae) in [
        (30, "none", "none"),
        (80, "minimal", "1"),
        (150, "minimal", "2"),
        (250, "moderate", "2"),
        (350, "moderate", "3"),
        (450, "severe", "3"),
    ] {
        assert_eq!((of("isl", tenths).as_str(), of("ctcae-v3", tenths).as_str()), (isl, ctcae), "{tenths}");
    }
    // 40 cm of 30 cm girth hold 2864.8 mL (derived): 6 % are 172 mL, 8 % are 229 mL.
    assert_eq!((of("200-ml", 60).as_str(), of("200-ml", 80).as_str()), ("no", "yes"));
    assert_eq!((of("10-percent", 95).as_str(), of("10-percent", 105).as_str()), ("no", "yes"));
    // 2 cm on 30 cm are 13.8 % (derived).
    assert_eq!((of("2-cm", 130).as_str(), of("2-cm", 145).as_str()), ("no", "yes"));
}

#[test]
fn unequal_spacing_and_the_split_of_a_segment() {
    // x 0 7 12 20.5 31 42, C 16 21 25.5 26 29.5 33 (derived): 2356.09662; cut at 35 cm: 1789.499049 + 566.597571.
    let marks = [(0.0, 16.0), (7.0, 21.0), (12.0, 25.5), (20.5, 26.0), (31.0, 29.5), (42.0, 33.0)];
    near(frustum(&stations(&marks, 0.0)).unwrap().ml, 2_356.096_62, 1e-9);
    let at_35 = 29.5 + (33.0 - 29.5) * 4.0 / 11.0;
    let below = [&marks[..5], &[(35.0, at_35)]].concat();
    near(frustum(&stations(&below, 0.0)).unwrap().ml, 1_789.499_049, 1e-9);
    near(cone(at_35, 33.0, 7.0), 566.597_571, 1e-8);
    assert!(disc(&stations(&marks, 0.0)).is_none(), "a disc needs equal spacing");
    assert!(frustum(&stations(&marks[..1], 0.0)).is_none());
}

#[test]
fn a_leg_that_another_program_measured() {
    // PyPI `yeadon` (BSD), sample file male1, left leg: its own segment volumes (independent implementation).
    let segments = [(10.1, 52.0), (26.35, 48.9), (42.6, 35.1), (56.5, 35.2), (81.6, 25.5)];
    let wanted = [3292.3233, 2301.6103, 1366.6455, 1855.5063];
    for (pair, ml) in segments.windows(2).zip(wanted) {
        let found = cone(pair[0].1, pair[1].1, pair[1].0 - pair[0].0);
        assert!((found - ml).abs() < 5e-5, "{found} {ml}");
    }
    // The same girths as a record from the floor; which landmark each one is called is ours.
    let mark = |x: f64, girth: f64, landmark: &str| {
        format!("landmark: {landmark}, at: {:.2}, girth: {girth}", 100.0 - x)
    };
    let marks = [
        mark(81.6, 25.5, "ankle"),
        mark(56.5, 35.2, "calf"),
        mark(42.6, 35.1, "knee"),
        mark(26.35, 48.9, "mid-thigh"),
        mark(10.1, 52.0, "upper-thigh"),
    ];
    let marks: Vec<&str> = marks.iter().map(String::as_str).collect();
    let other = listed(&marks).replace("  - ", "    - ").replace("marks:", "other_limb:\n  marks:");
    let made = report(&(leg(&marks) + &other), &[]);
    let whole: f64 = wanted.iter().sum();
    assert!((figure(&made, "/volume/measured_ml") - whole).abs() < 2e-4);
    assert_eq!(figure(&made, "/volume/excess_ml"), 0.0);
    let distal = figure(&made, "/volume/parts/0/measured_ml");
    assert!((distal - wanted[3] - wanted[2]).abs() < 1e-4, "{distal}");
}

#[test]
fn hand_and_foot_are_left_out() {
    // Tape cannot do them well (published: Framework 2006): marks beyond the wrist change nothing.
    let without = both_arms(&A1, &U1, "");
    let with = without.replacen("marks:\n", "marks:\n  - {landmark: hand, at: -8, girth: 20}\n", 1).replacen(
        "  marks:\n",
        "  marks:\n    - {landmark: hand, at: -8, girth: 19}\n",
        1,
    );
    assert_ne!(without, with);
    let (one, other) = (report(&without, &[]), report(&with, &[]));
    assert_eq!(one["volume"], other["volume"]);
}
