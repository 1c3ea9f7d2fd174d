//! Published and derived figures of the pressure law.

use std::f64::consts::PI;

use tapeline::pressure::{laplace, overlap_layers};
use tapeline::quantity::{Girth, mmhg, tension_from_newton_per_metre};

use crate::direct::{arm, chart_of, figure, has, leg, linear, near, report, word};

fn girth(tenths: i64) -> Girth {
    Girth::from_tenths(tenths).unwrap()
}

fn pressure(tension: f64, tenths: i64) -> f64 {
    mmhg(laplace(tension_from_newton_per_metre(tension), girth(tenths)))
}

/// The report of an arm of which only the forearm is in question: its girth and relaxed girth.
fn one_mark(k: f64, girth: &str, relaxed: &str, head: &str) -> serde_json::Value {
    let record = arm(&[&format!("landmark: forearm, at: 14, girth: {girth}")]);
    let chart = chart_of("arm", head, &[&format!("1 | forearm: 1-199 | relaxed: {{forearm: {relaxed}}}")]);
    report(&record, &[(&chart, Some(&linear(k)))])
}

const MARK: &str = "/pressure/0/marks/0";

#[test]
fn a_cylinder_under_even_tension() {
    // P = T/r (Laplace; derived): 100 N/m on r 5 cm is 2000 Pa. The nearest girth is 31.42 cm.
    let wanted = 2000.0 * (10.0 * PI / 31.42) / 133.322_387_415;
    near(pressure(100.0, 3142), wanted, 1e-12);
    near(2000.0 / 133.322_387_415, 15.001_231_516_9, 1e-11);
    // P = 2πT/C with 1 mmHg = 133.322387415 Pa (derived): 100 N/m on 25 cm.
    near(pressure(100.0, 2500), 18.851_103_491_3, 1e-11);
    let pascal = laplace(tension_from_newton_per_metre(100.0), girth(2500));
    near(pascal.get::<uom::si::pressure::pascal>(), 2_513.274_122_87, 1e-11);
    // The same on 22, 36 and 50 cm (derived).
    near(pressure(100.0, 2200), 21.421_708_512_9, 1e-11);
    near(pressure(100.0, 3600), 13.091_044_091_2, 1e-11);
    near(pressure(100.0, 5000), 9.425_551_745_67, 1e-11);
}

#[test]
fn tensions_for_twenty_mmhg() {
    // T = PC/2π (derived): 20 mmHg on 25 and 50 cm.
    near(pressure(106.094_584_91, 2500), 20.0, 1e-10);
    near(pressure(212.189_169_819, 5000), 20.0, 1e-10);
}

#[test]
fn layers_add() {
    // Σ T·2π/C (derived): 100 and 60 N/m on 25 cm.
    near(pressure(160.0, 2500), 30.161_765_586_1, 1e-11);
    // n = 1/(1 − overlap) (derived): half and two thirds.
    near(overlap_layers(0.5).unwrap(), 2.0, 1e-12);
    near(overlap_layers(2.0 / 3.0).unwrap(), 3.0, 1e-12);
    assert!(overlap_layers(1.0).is_none() && overlap_layers(-0.1).is_none());
    // Three layers of one fabric press three times as much, at the same stretch (derived).
    let one = one_mark(400.0, "25", "20", "layers: 1\n");
    let three = one_mark(400.0, "25", "20", "layers: 3\n");
    for key in ["tension_n_per_m", "pressure_mmhg"] {
        let path = format!("{MARK}/{key}");
        near(figure(&three, &path), 3.0 * figure(&one, &path), 1e-12);
    }
}

#[test]
fn reduction_of_the_limb_and_stretch_of_the_garment() {
    // e = RF/(1 − RF) (derived): RF 10, 15, 20 %.
    for (relaxed, percent) in [("90", 11.111_111_111_1), ("85", 17.647_058_823_5), ("80", 25.0)] {
        let made = one_mark(400.0, "100", relaxed, "");
        near(figure(&made, &format!("{MARK}/stretch_percent")), percent, 1e-11);
    }
}

#[test]
fn a_linear_fabric_at_one_reduction() {
    // P = 2πk(1/C0 − 1/C), k 400 N/m, RF 20 % (derived).
    let wanted = [
        (15, 12, 31.418_51),
        (20, 16, 23.563_88),
        (25, 20, 18.851_1),
        (30, 24, 15.709_25),
        (40, 32, 11.781_94),
        (50, 40, 9.425_552),
        (60, 48, 7.854_626),
    ];
    for (girth, relaxed, mmhg) in wanted {
        let made = one_mark(400.0, &girth.to_string(), &relaxed.to_string(), "");
        near(figure(&made, &format!("{MARK}/pressure_mmhg")), mmhg, 3e-7);
    }
}

#[test]
fn relaxed_girths_for_a_wanted_pressure() {
    // C0 = C/(1 + PC/(2πk)) (derived): 20 mmHg, C 25, k 400 gives 19.7591523367 cm and e 0.265236462274;
    // 25 mmHg, C 23, k 500 gives 18.4884852204 cm and e 0.244017545292. A chart holds them to 0.1 mm, so
    // the pressure comes back to what half of that is worth, by dP/dC0 = −2πk/C0².
    for (k, mmhg, limb, exact, e) in [
        (400.0, 20.0, 25.0, 19.759_152_336_7, 0.265_236_462_274),
        (500.0, 25.0, 23.0, 18.488_485_220_4, 0.244_017_545_292),
    ] {
        let stored = (exact * 100.0_f64).round() / 100.0;
        let made = one_mark(k, &limb.to_string(), &stored.to_string(), "");
        let slope = 2.0 * PI * k / (exact / 100.0_f64).powi(2) / 133.322_387_415 / 100.0;
        let found = figure(&made, &format!("{MARK}/pressure_mmhg"));
        assert!((found - mmhg).abs() <= slope * (stored - exact).abs() * 1.01, "{found}");
        near(limb / exact - 1.0, e, 1e-9);
        near(figure(&made, &format!("{MARK}/stretch_percent")), 100.0 * e, 1e-3);
    }
}

#[test]
fn stiffness_of_a_garment_of_fixed_size() {
    // k 400, C0 20 (derived); at the wrist, where the report states the stiffness.
    let wanted = [
        ("24.5", 17.312_237_900_2),
        ("25", 18.851_103_491_3),
        ("25.5", 20.329_621_412_2),
        ("26", 21.751_273_259_2),
    ];
    for (girth, mmhg) in wanted {
        let record = arm(&[&format!("landmark: wrist, at: 0, girth: {girth}")]);
        let chart = chart_of("arm", "", &["1 | wrist: 1-199 | relaxed: {wrist: 20}"]);
        let made = report(&record, &[(&chart, Some(&linear(400.0)))]);
        near(figure(&made, &format!("{MARK}/pressure_mmhg")), mmhg, 1e-11);
        if girth == "25" {
            // dP/dC = 2πk/C² (derived).
            near(figure(&made, "/pressure/0/reference/stiffness_mmhg_per_cm"), 3.016_176_558_61, 1e-11);
        }
    }
}

#[test]
fn an_untapered_tube_on_a_leg_is_reversed() {
    // C0 16 cm, k 250, ankle 20, calf 38 (derived): 14.7274246026 < 42.6320185865 mmHg.
    let record = leg(&[
        "landmark: ankle, at: 11, girth: 20",
        "landmark: calf, at: 31, girth: 38",
        "landmark: below-knee, at: 40, girth: 36",
    ]);
    let chart = chart_of(
        "leg",
        "from: ankle\nto: below-knee\n",
        &[
            "1 | ankle: 19-21, calf: 36-40, below-knee: 34-38 | relaxed: {ankle: 16, calf: 16, below-knee: 16}",
        ],
    );
    let made = report(&record, &[(&chart, Some(&linear(250.0)))]);
    near(figure(&made, "/pressure/0/marks/0/pressure_mmhg"), 14.727_424_602_6, 1e-11);
    near(figure(&made, "/pressure/0/marks/1/pressure_mmhg"), 42.632_018_586_5, 1e-11);
    near(figure(&made, "/graduation/0/largest_rise/rise_mmhg"), 42.632_018_586_5 - 14.727_424_602_6, 1e-11);
    assert_eq!(word(&made, "/graduation/0/verdict"), "certain");
    assert_eq!(word(&made, "/outcome"), "made-to-measure");
    assert!(made["charts"][0]["size"].is_null());
    assert_eq!(made["charts"][0]["sizes"][0]["reversed"], true);
    assert!(has(&made, "pressure-rises", "review"));
}

#[test]
fn no_contact_presses_nothing() {
    // C <= C0: no tension, so no pressure and no error of it (derived).
    for girth in ["20", "19.99"] {
        let made = one_mark(400.0, girth, "20", "");
        for key in ["tension_n_per_m", "pressure_mmhg", "sd_mmhg", "low_mmhg", "high_mmhg"] {
            assert_eq!(figure(&made, &format!("{MARK}/{key}")), 0.0, "{key} at {girth}");
        }
        assert!(has(&made, "slack", "review"));
    }
    let made = one_mark(400.0, "20.01", "20", "");
    assert!(figure(&made, &format!("{MARK}/pressure_mmhg")) > 0.0);
    assert!(!has(&made, "slack", "review"));
}

#[test]
fn nothing_is_estimated_beyond_the_tested_stretch() {
    let fabric = "tapeline: fabric/1\nlabel: short\ncurve: [{stretch: 0 %, tension: 0 N/m}, {stretch: 25 %, tension: 60 N/m}]\n";
    let made = |girth: &str| {
        let record = arm(&[&format!("landmark: forearm, at: 14, girth: {girth}")]);
        let chart = chart_of("arm", "", &["1 | forearm: 1-199 | relaxed: {forearm: 20}"]);
        report(&record, &[(&chart, Some(fabric))])
    };
    // The last point itself is still tested: 25 cm on 20 cm is 25 %.
    let last = made("25");
    near(figure(&last, &format!("{MARK}/tension_n_per_m")), 60.0, 1e-9);
    assert!(!has(&last, "beyond-tested", "review"));
    let beyond = made("25.01");
    for key in ["tension_n_per_m", "pressure_mmhg", "sd_mmhg", "low_mmhg", "high_mmhg"] {
        assert!(beyond.pointer(&format!("{MARK}/{key}")).unwrap().is_null(), "{key}");
    }
    near(figure(&beyond, &format!("{MARK}/stretch_percent")), 25.05, 1e-9);
    assert!(crate::direct::findings(&beyond).iter().any(|(id, _)| id == "beyond-tested"));
}

#[test]
fn the_variance_of_one_pressure() {
    // Linear fabric: dP/dC = 2πk/C², dP/dC0 = −2πk/C0² (derived from P = 2πk(1/C0 − 1/C)); tape 0.35 cm,
    // relaxed 0.3 cm, tension 5 % (house rules). C 25, C0 20, k 400.
    let made = one_mark(400.0, "25", "20", "");
    let per = |cm: f64| 2.0 * PI * 400.0 / (cm / 100.0).powi(2) / 133.322_387_415 / 100.0;
    let sd = (0.35 * per(25.0)).hypot(0.3 * per(20.0)).hypot(0.05 * 18.851_103_491_3);
    near(figure(&made, &format!("{MARK}/sd_mmhg")), sd, 1e-11);
    near(figure(&made, &format!("{MARK}/low_mmhg")), 18.851_103_491_3 - 1.96 * sd, 1e-11);
    near(figure(&made, &format!("{MARK}/high_mmhg")), 18.851_103_491_3 + 1.96 * sd, 1e-11);
    // A mark read twice: the tape's SD over √2 (derived).
    let twice = one_mark(400.0, "25, again: 25", "20", "");
    let sd = (0.35 / 2.0_f64.sqrt() * per(25.0)).hypot(0.3 * per(20.0)).hypot(0.05 * 18.851_103_491_3);
    near(figure(&twice, &format!("{MARK}/sd_mmhg")), sd, 1e-11);
    // The low end is no negative pressure.
    let little = one_mark(400.0, "20.1", "20", "");
    assert_eq!(figure(&little, &format!("{MARK}/low_mmhg")), 0.0);
}
