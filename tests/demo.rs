//! The demo clinic: every story holds, and its figures are what the knits' points and the law give.

use std::f64::consts::PI;

use serde_json::{Value, json};

use crate::direct::{figure, findings, has, near, word};
use crate::support::{Ran, root, run};

/// Points of the demo's knits, stretch in % and tension in N/m, as the files state them (invented).
const R2: [(f64, f64); 9] = [
    (0.0, 0.0),
    (10.0, 20.0),
    (20.0, 41.0),
    (30.0, 63.0),
    (45.0, 97.5),
    (60.0, 134.0),
    (80.0, 185.0),
    (100.0, 240.0),
    (120.0, 299.0),
];
const R3: [(f64, f64); 9] = [
    (0.0, 0.0),
    (10.0, 28.0),
    (20.0, 57.5),
    (30.0, 88.5),
    (45.0, 137.0),
    (60.0, 188.0),
    (80.0, 260.0),
    (100.0, 337.0),
    (120.0, 421.0),
];

/// 2πT/C in mmHg with T straight between the points (derived).
fn law(knit: &[(f64, f64)], relaxed: f64, girth: f64) -> f64 {
    let percent = 100.0 * (girth / relaxed - 1.0);
    let pair = knit.windows(2).find(|pair| percent < pair[1].0).unwrap();
    let tension = pair[0].1 + (pair[1].1 - pair[0].1) * (percent - pair[0].0) / (pair[1].0 - pair[0].0);
    200.0 * PI * tension / girth / 133.322_387_415
}

fn check(record: &str, charts: &[&str], status: i32) -> Value {
    let record = format!("demo/{record}.yaml");
    let charts: Vec<String> = charts.iter().map(|chart| format!("demo/{chart}.yaml")).collect();
    let mut args = vec!["check", &record, "--today", "2026-03-14", "--format", "json"];
    for chart in &charts {
        args.extend(["--chart", chart]);
    }
    let ran: Ran = run(&args).expect_status(status);
    assert!(ran.stderr.is_empty(), "{}", ran.stderr);
    ran.json()
}

/// Estimates of one size against the law at these marks: landmark, relaxed girth, limb girth.
#[track_caller]
fn pressures(report: &Value, size: &str, knit: &[(f64, f64)], marks: &[(&str, f64, f64)]) {
    let block = report["pressure"].as_array().unwrap().iter().find(|one| one["size"] == size).unwrap();
    assert_eq!(block["marks"].as_array().unwrap().len(), marks.len());
    for (at, (landmark, relaxed, girth)) in marks.iter().enumerate() {
        assert_eq!(word(block, &format!("/marks/{at}/landmark")), *landmark);
        near(figure(block, &format!("/marks/{at}/pressure_mmhg")), law(knit, *relaxed, *girth), 1e-11);
    }
}

fn margins(report: &Value, size: &str) -> Vec<f64> {
    let sizes = report["charts"][0]["sizes"].as_array().unwrap().iter();
    let size = sizes.clone().find(|one| one["size"] == size).unwrap();
    size["measures"].as_array().unwrap().iter().map(|one| one["margin_cm"].as_f64().unwrap()).collect()
}

#[test]
fn one_size_too_tight_above_and_the_next_too_loose_below() {
    let made = check("first-visit", &["sleeve-chart-a"], 1);
    assert_eq!(word(&made, "/outcome"), "made-to-measure");
    assert_eq!(made["charts"][0]["size"], json!(null));
    // Wrist 16.9 in 15.5–17.4, axilla 37.2 in 29.5–36; wrist in 17.5–19.4.
    assert_eq!(margins(&made, "2"), [0.5, 0.8, 0.6, -1.2]);
    assert_eq!(margins(&made, "3"), [-0.6, 0.7, 1.9, 2.3]);
    assert_eq!(made["charts"][0]["sizes"][1]["measures"][3]["direction"], "tight");
    assert_eq!(made["charts"][0]["sizes"][2]["measures"][0]["direction"], "loose");
    assert_eq!(word(&made, "/charts/0/nearest"), "3");
    let marks =
        [("wrist", 12.4, 16.9), ("forearm", 17.8, 25.7), ("upper-arm", 22.6, 32.4), ("axilla", 26.3, 37.2)];
    pressures(&made, "3", &R2, &marks);
}

#[test]
fn a_size_that_fits_and_falls() {
    let made = check("first-visit", &["sleeve-chart-b"], 0);
    assert_eq!(word(&made, "/outcome"), "try-on");
    assert_eq!(made["also"], json!([]));
    assert_eq!((word(&made, "/charts/0/size"), word(&made, "/charts/0/variant")), ("3 wide", "regular"));
    assert_eq!(word(&made, "/graduation/0/verdict"), "none");
    assert_eq!(made["graduation"][0]["judged"], true);
    let marks = [
        ("wrist", 11.6, 16.9),
        ("forearm", 17.7, 25.7),
        ("elbow", 19.0, 27.6),
        ("upper-arm", 22.5, 32.4),
        ("axilla", 27.2, 37.2),
    ];
    pressures(&made, "3 wide", &R2, &marks);
    assert_eq!(word(&made, "/pressure/0/reference/class"), "2");
    // A weak grip was answered yes: care, and no bar.
    assert!(has(&made, "weak-hands", "care"));
    // Cut cones between 0, 7, 14, 23, 33 and 42 cm (derived).
    let volume = |girths: [f64; 6]| -> f64 {
        let at = [0.0, 7.0, 14.0, 23.0, 33.0, 42.0];
        (1..6)
            .map(|n| {
                let (one, other): (f64, f64) = (girths[n - 1], girths[n]);
                (at[n] - at[n - 1]) * (one * one + one * other + other * other) / (12.0 * PI)
            })
            .sum()
    };
    let (swollen, other) =
        (volume([16.9, 20.8, 25.7, 27.6, 32.4, 37.2]), volume([16.2, 19.7, 24.1, 25.9, 29.8, 34.3]));
    near(figure(&made, "/volume/measured_ml"), swollen, 1e-12);
    near(figure(&made, "/volume/excess_percent"), 100.0 * (swollen - other) / other, 1e-11);
    let grades: Vec<(&str, &str)> = made["volume"]["severity"]
        .as_array()
        .unwrap()
        .iter()
        .map(|one| (one["set"].as_str().unwrap(), one["grade"].as_str().unwrap()))
        .collect();
    assert_eq!(
        grades,
        [("isl", "minimal"), ("ctcae-v3", "2"), ("200-ml", "yes"), ("10-percent", "yes"), ("2-cm", "yes")]
    );
}

#[test]
fn in_size_is_not_graduated() {
    let made = check("first-visit", &["sleeve-chart-c"], 1);
    assert!(margins(&made, "3").iter().all(|margin| *margin > 0.0), "every girth is in size 3");
    assert_eq!(word(&made, "/outcome"), "made-to-measure");
    assert_eq!(made["charts"][0]["size"], json!(null));
    let size = &made["charts"][0]["sizes"][2];
    assert_eq!((word(size, "/verdict"), &size["reversed"]), ("inside", &json!(true)));
    let marks =
        [("wrist", 12.8, 16.9), ("forearm", 15.6, 25.7), ("upper-arm", 21.7, 32.4), ("axilla", 26.8, 37.2)];
    pressures(&made, "3", &R3, &marks);
    let worst = &made["graduation"][0]["pairs"][0];
    assert_eq!((word(worst, "/proximal"), word(worst, "/grade")), ("forearm", "certain"));
    near(figure(worst, "/rise_mmhg"), law(&R3, 15.6, 25.7) - law(&R3, 12.8, 16.9), 1e-11);
    assert!(has(&made, "pressure-rises", "review"));
}

#[test]
fn a_ruler_decides_the_fall() {
    let made = check("first-visit", &["sleeve-chart-d"], 0);
    assert_eq!(word(&made, "/outcome"), "try-on");
    assert_eq!(
        (word(&made, "/graduation/0/basis"), word(&made, "/graduation/0/verdict")),
        ("stretch", "none")
    );
    assert_eq!(made["graduation"][0]["judged"], true);
    // Flat widths 5.8, 8.9, 11.75 and 14.45 cm, doubled.
    for (at, (girth, flat)) in
        [(16.9, 5.8), (25.7, 8.9), (32.4, 11.75), (37.2, 14.45)].into_iter().enumerate()
    {
        let path = |key: &str| format!("/pressure/0/marks/{at}/{key}");
        near(figure(&made, &path("stretch_percent")), 100.0 * (girth / (2.0 * flat) - 1.0), 1e-11);
        assert!(made.pointer(&path("pressure_mmhg")).unwrap().is_null(), "no curve, no mmHg");
    }
}

#[test]
fn without_widths_the_fall_is_unproven_and_three_ways_on_are_told() {
    let made = check("first-visit", &["sleeve-chart-e"], 1);
    assert_eq!(word(&made, "/outcome"), "unproven");
    assert_eq!(word(&made, "/charts/0/size"), "3");
    let next = serde_json::to_string(&made).unwrap().to_lowercase();
    for way in ["flat width", "curve", "reading"] {
        assert!(next.contains(way), "`{way}` is not told");
    }
}

#[test]
fn the_best_of_five_charts_sets_the_outcome() {
    let all = ["sleeve-chart-a", "sleeve-chart-b", "sleeve-chart-c", "sleeve-chart-d", "sleeve-chart-e"];
    let made = check("first-visit", &all, 0);
    let outcomes: Vec<&str> =
        made["charts"].as_array().unwrap().iter().map(|one| one["outcome"].as_str().unwrap()).collect();
    assert_eq!(outcomes, ["made-to-measure", "try-on", "made-to-measure", "try-on", "unproven"]);
    assert_eq!(word(&made, "/outcome"), "try-on");
}

#[test]
fn a_blank_screening_is_one_line_and_sizing_is_still_shown() {
    let made = check("blank-screening", &["sleeve-chart-b"], 1);
    assert_eq!(word(&made, "/outcome"), "incomplete");
    assert_eq!(findings(&made).iter().filter(|(id, _)| id == "not-answered").count(), 1);
    assert_eq!(word(&made, "/charts/0/size"), "3 wide");
    assert_eq!(made["screening"]["answered"], false);
    assert!(made["screening"]["unanswered"].as_array().unwrap().len() > 20);
}

#[test]
fn a_narrow_ankle_under_a_wide_calf_reverses_a_stock_stocking() {
    let made = check("narrow-ankle", &["stocking-chart-a"], 1);
    assert_eq!(word(&made, "/outcome"), "made-to-measure");
    let marks = [("ankle", 14.6, 20.1), ("calf", 22.6, 43.6), ("below-knee", 24.4, 38.9)];
    pressures(&made, "2", &R3, &marks);
    let worst = &made["graduation"][0]["pairs"][0];
    assert_eq!(
        (word(worst, "/distal"), word(worst, "/proximal"), word(worst, "/grade")),
        ("ankle", "calf", "certain")
    );
    // Best 2000, JBJS Br 82-B:116 (published): any rise is a reversal; this one is of 6.9 mmHg (derived).
    near(figure(worst, "/rise_mmhg"), law(&R3, 22.6, 43.6) - law(&R3, 14.6, 20.1), 1e-11);
    // 50–80 % of the ankle (published: Li 2021): 126 % at the calf is outside.
    let ratio = &made["graduation"][0]["ratios"][0];
    near(figure(ratio, "/percent"), 100.0 * law(&R3, 22.6, 43.6) / law(&R3, 14.6, 20.1), 1e-11);
    assert_eq!(ratio["inside"], false);
}

#[test]
fn a_leg_that_fits() {
    let made = check("leg", &["stocking-chart-b"], 0);
    assert_eq!(word(&made, "/outcome"), "try-on");
    assert_eq!((word(&made, "/charts/0/size"), word(&made, "/graduation/0/verdict")), ("3", "none"));
    let marks = [
        ("ankle", 14.4, 22.9),
        ("lower-calf", 18.3, 30.1),
        ("calf", 23.1, 38.2),
        ("below-knee", 23.1, 36.0),
        ("knee", 25.5, 38.1),
        ("mid-thigh", 33.3, 51.2),
        ("upper-thigh", 39.4, 57.3),
    ];
    pressures(&made, "3", &R2, &marks);
    assert!(made["graduation"][0]["ratios"].as_array().unwrap().iter().all(|ratio| ratio["inside"] == true));
}

#[test]
fn a_stop_stands_above_a_size_that_fits() {
    let made = check("stop", &["stocking-chart-b"], 3);
    assert_eq!(word(&made, "/outcome"), "stop");
    // Index 0.55, below 0.6 (published: Rabe 2020, Phlebology 35:447).
    assert!(has(&made, "abpi", "stop"));
    assert_eq!(word(&made, "/charts/0/outcome"), "try-on");
}

#[test]
fn demo_data_say_that_they_are_invented() {
    for entry in std::fs::read_dir(root().join("demo")).unwrap() {
        let path = entry.unwrap().path();
        let text = std::fs::read_to_string(&path).unwrap();
        let head: String = text.lines().take(4).collect::<Vec<_>>().join("\n").to_lowercase();
        assert!(head.contains("invented"), "{}", path.display());
    }
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    for format in ["json", "text"] {
        let args = [
            "check",
            "demo/leg.yaml",
            "--chart",
            "demo/stocking-chart-b.yaml",
            "--today",
            "2026-03-14",
            "--format",
            format,
        ];
        assert_eq!(run(&args).stdout, run(&args).stdout);
    }
}
