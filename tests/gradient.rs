//! `gradient`, `pattern` and `fabric` as a user meets them: verdicts, findings, files in and out.

use serde_json::Value;

use crate::direct::{arm, figure, findings, has, leg, linear, near, word};
use crate::support::{Ran, folder, root, run, run_in};

const DAY: [&str; 2] = ["--today", "2026-03-14"];

/// A run in a folder of these files.
fn ran(files: &[(&str, &str)], args: &[&str]) -> Ran {
    let place = folder(files);
    let mut all = args.to_vec();
    all.extend(DAY);
    run_in(place.path(), &all, None)
}

/// The JSON report of `garment.yaml` on `record.yaml`, with `k400.yaml` and `k200.yaml` beside them.
fn asked(record: &str, garment: &str) -> Value {
    let (k400, k200) = (linear(400.0), linear(200.0).replace("label: linear", "label: soft"));
    let files =
        [("record.yaml", record), ("garment.yaml", garment), ("k400.yaml", &k400), ("k200.yaml", &k200)];
    let ran = ran(&files, &["gradient", "record.yaml", "--garment", "garment.yaml", "--format", "json"]);
    assert!([0, 1, 3].contains(&ran.status), "{}", ran.stderr);
    ran.json()
}

/// A garment of the linear knit, k 400 N/m.
fn garment(limb: &str, relaxed: &str, more: &str) -> String {
    format!(
        "tapeline: garment/1\nlabel: garment G\nlimb: {limb}\nfabric: k400.yaml\ncontains: [polyamide]\nhand_part: no\n{more}relaxed: {{{relaxed}}}\n"
    )
}

/// A leg with ankle 22, calf and below-knee as given.
fn three(calf: &str, below_knee: &str) -> String {
    leg(&[
        "landmark: ankle, at: 11, girth: 22",
        &format!("landmark: calf, at: 31, girth: {calf}"),
        &format!("landmark: below-knee, at: 41, girth: {below_knee}"),
    ])
}

const FALLS: &str = "ankle: 17 cm, calf: 30 cm, below-knee: 31 cm";

#[test]
fn a_garment_that_falls_has_no_outcome_and_status_0() {
    let record = three("36", "35");
    let k = linear(400.0);
    let worn = garment("leg", FALLS, "");
    let files = [("record.yaml", record.as_str()), ("garment.yaml", &worn), ("k400.yaml", &k)];
    let ran = ran(&files, &["gradient", "record.yaml", "--garment", "garment.yaml"]).expect_status(0);
    assert!(ran.stdout.contains("falls toward the trunk at every judged step"), "{}", ran.stdout);
    assert!(ran.stderr.is_empty());
    let found = asked(&record, &worn);
    assert!(found["outcome"].is_null() && findings(&found).is_empty(), "{:?}", findings(&found));
    // P = 2πk(1/C0 − 1/C) (derived).
    let p = |c: f64, c0: f64| 2.0 * std::f64::consts::PI * 400.0 * (100.0 / c0 - 100.0 / c) / 133.322_387_415;
    near(figure(&found, "/pressure/0/marks/0/pressure_mmhg"), p(22.0, 17.0), 1e-11);
    near(figure(&found, "/garment/swelling/1/plus_1cm_mmhg"), p(37.0, 30.0), 1e-11);
    near(figure(&found, "/garment/swelling/1/minus_1cm_mmhg"), p(35.0, 30.0), 1e-11);
    // Every 0.5 cm between 11 and 41 cm, both ends with it; half way the girths are half way (derived).
    let profile = found["garment"]["profile"].as_array().unwrap();
    assert_eq!(profile.len(), 61);
    near(figure(&found, "/garment/profile/20/pressure_mmhg"), p(29.0, 23.5), 1e-11);
    assert_eq!(word(&found, "/graduation/0/verdict"), "none");
    assert_eq!(found["charts"], serde_json::json!([]));
}

#[test]
fn the_narrow_ankle_from_reversal_to_remedy() {
    let leg = "demo/narrow-ankle.yaml";
    let stock = ["gradient", leg, "--chart", "demo/stocking-chart-a.yaml", "--size", "2", "--format", "json"];
    let before = run(&[&stock[..], &DAY[..]].concat()).expect_status(1).json();
    assert_eq!(word(&before, "/graduation/0/verdict"), "certain");
    assert!(has(&before, "pressure-rises", "review") && has(&before, "ring", "review"));
    let place = folder(&[]);
    let file = place.path().join("made.yaml");
    let file = file.to_str().unwrap();
    let args = [
        "pattern",
        leg,
        "--fabric",
        "demo/knit-r3.yaml",
        "--target",
        "class=2",
        "--write",
        file,
        "--format",
        "json",
    ];
    let made = run(&[&args[..], &DAY[..]].concat()).expect_status(0).json();
    let again = ["gradient", leg, "--garment", file, "--format", "json"];
    let after = run(&[&again[..], &DAY[..]].concat()).expect_status(0).json();
    assert_eq!(word(&after, "/graduation/0/verdict"), "none");
    assert_eq!(after["graduation"][0]["judged"], true);
    assert!(findings(&after).is_empty(), "{:?}", findings(&after));
    // The pattern's own read-back is what `gradient` reads.
    for at in 0..4 {
        let path = format!("/pressure/0/marks/{at}/pressure_mmhg");
        assert_eq!(figure(&made, &path), figure(&after, &path));
        // The written girth is on a raster of 0.1 mm: off by no more than half of it is worth (derived).
        let wanted = figure(&made, &format!("/pattern/marks/{at}/wanted_mmhg"));
        let sewing = figure(&made, &format!("/pattern/marks/{at}/sewing_error_mmhg")) / 0.3;
        assert!((figure(&after, &path) - wanted).abs() <= 0.005 * sewing * 1.01);
    }
    // RAL-GZ 387/1:2008 class 2 (published): the middle of 23 to 32 mmHg.
    near(figure(&made, "/pattern/marks/0/wanted_mmhg"), 27.5, 1e-12);
    // The demo file is that garment.
    let demo = std::fs::read_to_string(root().join("demo/narrow-ankle-garment.yaml")).unwrap();
    let written = std::fs::read_to_string(file).unwrap();
    let relaxed = |text: &str| text.split("relaxed:").nth(1).unwrap().to_owned();
    assert_eq!(relaxed(&demo), relaxed(&written));
}

#[test]
fn a_ring_is_a_mark_above_both_neighbours() {
    // Calf far above ankle and below-knee; then level with below-knee.
    let ring = asked(&three("36", "35"), &garment("leg", "ankle: 18 cm, calf: 24 cm, below-knee: 31 cm", ""));
    assert!(has(&ring, "ring", "review"));
    let level =
        asked(&three("36", "35"), &garment("leg", "ankle: 18 cm, calf: 24 cm, below-knee: 23.6 cm", ""));
    assert!(!has(&level, "ring", "review") && has(&level, "pressure-rises", "review"));
}

#[test]
fn a_top_edge_against_the_garment_below_it() {
    let edge = |relaxed: &str| {
        let more = format!("top_edge: {{relaxed: {relaxed}}}\n");
        asked(&three("36", "35"), &garment("leg", FALLS, &more))
    };
    // The same knit pulled tighter: k 400 on 35 cm, band 28 cm against 31 cm.
    let tight = edge("28 cm");
    assert!(has(&tight, "top-edge", "review"));
    let p = |c0: f64| 2.0 * std::f64::consts::PI * 400.0 * (100.0 / c0 - 100.0 / 35.0) / 133.322_387_415;
    near(figure(&tight, "/garment/edges/0/rise_mmhg"), p(28.0) - p(31.0), 1e-11);
    near(figure(&tight, "/garment/edges/0/folded_mmhg"), 2.0 * p(28.0), 1e-11);
    near(figure(&tight, "/pressure/0/top_edge/pressure_mmhg"), p(28.0), 1e-11);
    // One girth under both: only the two relaxed girths count, 0.3 cm each (house rule), dP/dC0 = 2πk/C0²,
    // and for one linear knit the slopes 2πk/C² are alike (derived).
    let per = |c0: f64| 2.0 * std::f64::consts::PI * 400.0 / (c0 / 100.0).powi(2) / 133.322_387_415 / 100.0;
    near(figure(&tight, "/garment/edges/0/sd_mmhg"), 0.3 * per(28.0).hypot(per(31.0)), 1e-9);
    // Just a little looser than the garment: a rise is possible, which is care only when it shows one.
    let loose = edge("31.1 cm");
    assert!(!findings(&loose).iter().any(|(id, _)| id == "top-edge"));
    assert!(has(&edge("30.9 cm"), "top-edge", "review"));
}

#[test]
fn garments_over_one_another_are_an_upper_estimate() {
    let record = arm(&[
        "landmark: hand, at: -9, girth: 20",
        "landmark: wrist, at: 0, girth: 17",
        "landmark: forearm, at: 14, girth: 26",
        "landmark: axilla, at: 42, girth: 34",
    ]);
    let k = linear(400.0);
    let sleeve = garment("arm", "wrist: 13.5 cm, forearm: 22 cm, axilla: 30.5 cm", "");
    let hand = garment("arm", "hand: 18 cm, wrist: 15.5 cm", "");
    let outer = garment("arm", "axilla: 28 cm", "from: upper-arm\n");
    let worn = |pieces: &str| {
        let both = format!("tapeline: garment/1\nlabel: both\nlimb: arm\nworn_together:\n{pieces}");
        let files = [
            ("record.yaml", record.as_str()),
            ("both.yaml", &both),
            ("sleeve.yaml", &sleeve),
            ("hand.yaml", &hand),
            ("outer.yaml", &outer),
            ("k400.yaml", &k),
        ];
        let ran = ran(&files, &["gradient", "record.yaml", "--garment", "both.yaml", "--format", "json"]);
        assert!(ran.status < 2, "{}", ran.stderr);
        ran.json()
    };
    let p = |c: f64, c0: f64| 2.0 * std::f64::consts::PI * 400.0 * (100.0 / c0 - 100.0 / c) / 133.322_387_415;
    let both = worn("  - {garment: sleeve.yaml}\n  - {garment: hand.yaml}\n");
    assert!(has(&both, "garments-overlap", "care"));
    let sum = p(17.0, 13.5) + p(17.0, 15.5);
    near(figure(&both, "/garment/overlaps/0/sum_mmhg"), sum, 1e-11);
    // 0.83 to 0.85 of the sum (Ann Vasc Dis 2012;5:435, published).
    near(figure(&both, "/garment/overlaps/0/in_vivo_low_mmhg"), 0.83 * sum, 1e-11);
    near(figure(&both, "/garment/overlaps/0/in_vivo_high_mmhg"), 0.85 * sum, 1e-11);
    // The hand piece cut short of the wrist: no overlap.
    let apart = worn("  - {garment: sleeve.yaml}\n  - {garment: hand.yaml, to: thumb-web}\n");
    assert!(!has(&apart, "garments-overlap", "care"));
    near(figure(&apart, "/pressure/0/marks/1/pressure_mmhg"), p(17.0, 13.5), 1e-11);
    // A short outer layer turns the fall round.
    let turned = worn("  - {garment: sleeve.yaml}\n  - {garment: outer.yaml}\n");
    assert!(has(&turned, "pressure-rises", "review"));
    assert_eq!(word(&turned, "/graduation/0/verdict"), "certain");
}

#[test]
fn a_fabric_for_one_mark() {
    let mixed = asked(&three("36", "35"), &garment("leg", FALLS, "fabric_at: {calf: k200.yaml}\n"));
    let p =
        |k: f64, c: f64, c0: f64| 2.0 * std::f64::consts::PI * k * (100.0 / c0 - 100.0 / c) / 133.322_387_415;
    near(figure(&mixed, "/pressure/0/marks/0/pressure_mmhg"), p(400.0, 22.0, 17.0), 1e-11);
    near(figure(&mixed, "/pressure/0/marks/1/pressure_mmhg"), p(200.0, 36.0, 30.0), 1e-11);
}

#[test]
fn classes_between_and_beside_the_claimed_one() {
    // RAL-GZ 387/1:2008 (published): class 1 18 to 21, class 2 23 to 32, class 3 34 to 46 mmHg.
    let claimed = |class: &str, mmhg: f64| {
        let c0 = 22.0 / (1.0 + mmhg * 133.322_387_415 * 0.22 / (2.0 * std::f64::consts::PI * 400.0));
        let relaxed = format!("ankle: {c0:.2} cm, calf: 31 cm, below-knee: 32 cm");
        let more = format!("scheme: ral-gz-387-1\nclass: \"{class}\"\n");
        asked(&three("36", "35"), &garment("leg", &relaxed, &more))
    };
    let gap = claimed("2", 22.0);
    assert_eq!(word(&gap, "/pressure/0/reference/class"), "between 1 and 2");
    assert!(has(&gap, "between-classes", "note"));
    let other = claimed("2", 20.9);
    assert!(has(&other, "class-off", "note") && !has(&other, "between-classes", "note"));
    let inside = claimed("2", 24.0);
    assert!(!has(&inside, "class-off", "note") && !has(&inside, "between-classes", "note"));
    let far = claimed("3", 20.0);
    assert!(has(&far, "class-missed", "care") && !has(&far, "class-off", "note"));
}

#[test]
fn a_section_that_is_not_round() {
    let record = |calipers: &str| {
        leg(&[
            &format!("landmark: ankle, at: 11, girth: 25.23, calipers: {{{calipers}}}"),
            "landmark: calf, at: 31, girth: 36",
            "landmark: below-knee, at: 41, girth: 35",
        ])
    };
    let oval = asked(&record("wide: 9, deep: 7"), &garment("leg", FALLS, ""));
    // C·a/(2π·b²) (derived): 25.23·4.5/(2π·3.5²).
    let ratio = 25.23 * 4.5 / (2.0 * std::f64::consts::PI * 3.5 * 3.5);
    near(figure(&oval, "/garment/sections/0/sharp_over_mean"), ratio, 1e-12);
    let mean = figure(&oval, "/garment/sections/0/mean_mmhg");
    near(figure(&oval, "/garment/sections/0/sharp_mmhg"), mean * ratio, 1e-12);
    assert!(!has(&oval, "calipers-differ", "care"));
    // An oval of 9 by 7 cm is 25.23 cm around; one of 10 by 7 is 26.9, more than 5 % off the tape.
    assert!(has(&asked(&record("wide: 10, deep: 7"), &garment("leg", FALLS, "")), "calipers-differ", "care"));
}

#[test]
fn a_ruler_alone_says_what_would_decide() {
    let flat = |widths: &str| {
        asked(
            &three("36", "35"),
            &format!(
                "tapeline: garment/1\nlabel: flat\nlimb: leg\nhand_part: no\ncontains: [polyamide]\nflat_width: {{{widths}}}\n"
            ),
        )
    };
    let open = flat("ankle: 8.5 cm, calf: 12.2 cm, below-knee: 13.5 cm");
    assert_eq!(word(&open, "/graduation/0/basis"), "stretch");
    assert_eq!(word(&open, "/graduation/0/verdict"), "undecided");
    assert_eq!(word(&open, "/outcome"), "unproven");
    let row = &open["garment"]["undecided"][0];
    // b·ln(e2/e1) = ln(C2/C1) (derived): e 22/17 − 1 and 36/24.4 − 1.
    let (e1, e2) = (22.0_f64 / 17.0 - 1.0, 36.0_f64 / 24.4 - 1.0);
    near(row["level_exponent"].as_f64().unwrap(), (36.0_f64 / 22.0).ln() / (e2 / e1).ln(), 1e-12);
    assert_eq!(row["falls_for_exponents"], "below");
    near(row["level_tension_ratio"].as_f64().unwrap(), 36.0 / 22.0, 1e-12);
    assert!(row["ways"].as_array().unwrap().len() >= 2);
    assert!(!open["garment"]["missing"].as_array().unwrap().is_empty());
    let steep = flat("ankle: 8 cm, calf: 15.5 cm, below-knee: 16.2 cm");
    assert_eq!(word(&steep, "/graduation/0/verdict"), "none");
    assert_eq!(steep["garment"]["undecided"], serde_json::json!([]));
}

#[test]
fn readings_give_the_verdict() {
    let read = |readings: &str| {
        let record = format!("{}readings:\n{readings}", three("36", "35"));
        let files = [("record.yaml", record.as_str())];
        ran(&files, &["gradient", "record.yaml", "--readings", "--format", "json"])
    };
    let falls = read(
        "  - {landmark: ankle, pressure: 30}\n  - {landmark: calf, pressure: 22}\n  - {landmark: below-knee, pressure: 15}\n",
    );
    let falls = falls.expect_status(0).json();
    assert_eq!(word(&falls, "/graduation/0/basis"), "readings");
    assert_eq!(falls["graduation"][0]["judged"], true);
    // The difference of two readings of SD 2.5 mmHg (house rule): Φ(−8/(2.5√2)) (derived).
    let chance = 0.5 * libm::erfc(8.0 / (2.5 * 2.0_f64.sqrt()) / 2.0_f64.sqrt());
    near(figure(&falls, "/graduation/0/pairs/0/chance"), chance, 1e-12);
    let rises = read(
        "  - {landmark: ankle, pressure: 20, sd: 1}\n  - {landmark: calf, pressure: 26, sd: 1}\n  - {landmark: below-knee, pressure: 15}\n",
    );
    let rises = rises.expect_status(1).json();
    assert!(has(&rises, "pressure-rises", "review"));
    // Repeats: the mean, and the SD over √2 (derived).
    let twice = read(
        "  - {landmark: ankle, pressure: 29}\n  - {landmark: ankle, pressure: 31}\n  - {landmark: calf, pressure: 22}\n",
    );
    let twice = twice.json();
    near(figure(&twice, "/pressure/0/marks/0/pressure_mmhg"), 30.0, 1e-12);
    near(figure(&twice, "/pressure/0/marks/0/sd_mmhg"), 2.5 / 2.0_f64.sqrt(), 1e-12);
    assert!(has(&twice, "gradient-not-judged", "note"));
    let mixed = read(
        "  - {landmark: ankle, pressure: 30, posture: supine}\n  - {landmark: calf, pressure: 22, posture: standing}\n",
    );
    assert!(has(&mixed.json(), "readings-mixed", "care"));
    assert!(!has(&falls, "readings-mixed", "care"));
    let none = ran(&[("record.yaml", &three("36", "35"))], &["gradient", "record.yaml", "--readings"]);
    assert!(none.expect_status(2).stderr.contains("holds no readings"));
}

#[test]
fn readings_against_the_estimate_and_a_calibrated_curve() {
    let k = linear(400.0);
    let worn = garment("leg", FALLS, "");
    let p = |c: f64, c0: f64| 2.0 * std::f64::consts::PI * 400.0 * (100.0 / c0 - 100.0 / c) / 133.322_387_415;
    let all = [p(22.0, 17.0), p(36.0, 30.0), p(35.0, 31.0)];
    // Readings at 0.8 of the estimate: the scale is 0.8, whatever the weights (derived).
    let lines: Vec<String> = ["ankle", "calf", "below-knee"]
        .iter()
        .zip(all)
        .map(|(mark, p)| format!("  - {{landmark: {mark}, pressure: {:.12}, garment: garment G}}\n", 0.8 * p))
        .collect();
    let record = format!("{}readings:\n{}", three("36", "35"), lines.concat());
    let place = folder(&[("record.yaml", &record), ("garment.yaml", &worn), ("k400.yaml", &k)]);
    let args = [
        "gradient",
        "record.yaml",
        "--garment",
        "garment.yaml",
        "--calibrate",
        "new.yaml",
        "--format",
        "json",
        "--today",
        "2026-03-14",
    ];
    let found = run_in(place.path(), &args, None).expect_status(0).json();
    assert_eq!(word(&found, "/graduation/0/basis"), "readings");
    assert_eq!(word(&found, "/graduation/1/basis"), "fabric");
    near(figure(&found, "/garment/against/scale"), 0.8, 1e-9);
    near(figure(&found, "/garment/against/bias_mmhg"), 0.2 * all.iter().sum::<f64>() / 3.0, 1e-9);
    let written = std::fs::read_to_string(place.path().join("new.yaml")).unwrap();
    assert!(written.contains("(calibrated)") && written.contains("tension: 960 N/m"), "{written}");
    // An existing file is kept.
    let again = run_in(place.path(), &args, None).expect_status(2);
    assert!(again.stderr.contains("exists and is kept"), "{}", again.stderr);
    // With the new curve the estimate is what was read.
    std::fs::write(place.path().join("k400.yaml"), written).unwrap();
    let args =
        ["gradient", "record.yaml", "--garment", "garment.yaml", "--format", "json", "--today", "2026-03-14"];
    let found = run_in(place.path(), &args, None).json();
    near(figure(&found, "/garment/against/scale"), 1.0, 1e-6);
}

#[test]
fn check_takes_readings_that_name_chart_and_size() {
    let chart = "tapeline: chart/1\nlabel: chart T\nlimb: leg\nfrom: ankle\nto: below-knee\ncontains: [polyamide]\nunits: {length: cm}\nsizes:\n  - size: \"1\"\n    girths: {ankle: 20-24, calf: 33-39, below-knee: 32-38}\n";
    let checked = |readings: &str| {
        let record = format!("{}{readings}", three("36", "35"));
        let files = [("record.yaml", record.as_str()), ("chart.yaml", chart)];
        ran(&files, &["check", "record.yaml", "--chart", "chart.yaml", "--format", "json"]).json()
    };
    assert_eq!(word(&checked(""), "/outcome"), "unproven");
    let reading = |mark: &str, mmhg: u32| {
        format!("  - {{landmark: {mark}, pressure: {mmhg}, garment: \"chart T, size 1\"}}\n")
    };
    let all = |ankle, calf, below| {
        format!(
            "readings:\n{}{}{}",
            reading("ankle", ankle),
            reading("calf", calf),
            reading("below-knee", below)
        )
    };
    let falls = checked(&all(30, 22, 15));
    assert_eq!(word(&falls, "/outcome"), "try-on");
    assert_eq!(word(&falls, "/graduation/0/basis"), "readings");
    let rises = checked(&all(20, 32, 15));
    assert_eq!(word(&rises, "/outcome"), "made-to-measure");
    // A reading that does not name the size says nothing of it.
    let unnamed = all(30, 22, 15).replace(", garment: \"chart T, size 1\"", "");
    assert_eq!(word(&checked(&unnamed), "/outcome"), "unproven");
}

#[test]
fn a_wrap_along_a_leg() {
    let wrap =
        "tapeline: wrap/1\ntension: 0.5 kgf\nwidth: 10 cm\noverlap: 50 %\nfrom: ankle\nto: below-knee\n";
    let found = asked(&three("36", "35"), wrap);
    // K·F·n/(C·W) (derived): n 2.
    near(
        figure(&found, "/pressure/0/marks/0/pressure_mmhg"),
        4_621.654_351_332_161 * 0.5 * 2.0 / 220.0,
        1e-12,
    );
    assert!(found["pressure"][0]["marks"][0]["relaxed_cm"].is_null());
    assert!(has(&found, "pressure-rises", "review"), "35 cm above 36 cm");
}

#[test]
fn a_stop_leaves_figures_only() {
    let args = ["gradient", "demo/stop.yaml", "--chart", "demo/stocking-chart-b.yaml", "--size", "3"];
    let text = run(&[&args[..], &DAY[..]].concat()).expect_status(3);
    assert!(text.stdout.contains("Figures only, do not fit"), "{}", text.stdout);
    let json = run(&[&args[..], &DAY[..], &["--format", "json"]].concat()).expect_status(3).json();
    assert_eq!(word(&json, "/garment/caution"), "figures only, do not fit");
    let args = [
        "pattern",
        "demo/stop.yaml",
        "--fabric",
        "demo/knit-r2.yaml",
        "--target",
        "25mmHg",
        "--fall-to",
        "40%",
    ];
    let text = run(&[&args[..], &DAY[..]].concat()).expect_status(3);
    assert!(text.stdout.contains("Figures only, do not fit"), "{}", text.stdout);
}

#[test]
fn targets_that_cannot_be_had() {
    let (record, k) = (three("36", "35"), linear(400.0));
    let short = "tapeline: fabric/1\nlabel: short\ncurve: [{stretch: 0 %, tension: 0 N/m}, {stretch: 20 %, tension: 80 N/m}]\n";
    let files = [("record.yaml", record.as_str()), ("k400.yaml", &k), ("short.yaml", short)];
    let pattern = |args: &[&str]| {
        let all = [&["pattern", "record.yaml", "--format", "json"], args].concat();
        ran(&files, &all)
    };
    let straight = ["--fabric", "k400.yaml", "--target", "27mmHg", "--fall-to", "60%"];
    let falls = pattern(&straight).expect_status(0).json();
    // Straight in position (derived): calf at 20 of 30 cm has 100 − 40·20/30 %.
    near(figure(&falls, "/pattern/marks/1/wanted_percent"), 100.0 - 40.0 * 20.0 / 30.0, 1e-12);
    near(figure(&falls, "/pattern/marks/2/wanted_mmhg"), 0.6 * 27.0, 1e-12);
    // Reduction of the limb and stretch of the garment: e = RF/(1 − RF) (derived).
    let (e, rf) = (
        figure(&falls, "/pattern/marks/0/stretch_percent") / 100.0,
        figure(&falls, "/pattern/marks/0/reduction_percent") / 100.0,
    );
    near(e, rf / (1.0 - rf), 1e-12);
    let list = ["--fabric", "k400.yaml", "--target", "ankle=20,calf=20,below-knee=12"];
    assert!(has(&pattern(&list).expect_status(1).json(), "target-rises", "review"));
    let list = ["--fabric", "k400.yaml", "--target", "ankle=20,calf=19.9,below-knee=12"];
    assert!(!has(&pattern(&list).json(), "target-rises", "review"));
    // 80 N/m on 22 cm is 17.14 mmHg at most (2πT/C; derived).
    let most = ["--fabric", "short.yaml", "--target", "ankle=17.2,below-knee=5"];
    let beyond = pattern(&most).expect_status(1).json();
    assert!(has(&beyond, "target-beyond", "review"));
    near(
        figure(&beyond, "/pattern/marks/0/most_mmhg"),
        2.0 * std::f64::consts::PI * 80.0 / 0.22 / 133.322_387_415,
        1e-11,
    );
    assert!(beyond["pattern"]["marks"][0]["relaxed_cm"].is_null() && beyond["pattern"]["complete"] == false);
    let just = ["--fabric", "short.yaml", "--target", "ankle=17.1,below-knee=5"];
    assert!(!has(&pattern(&just).json(), "target-beyond", "review"));
    let write = [&most[..], &["--write", "made.yaml"]].concat();
    assert!(pattern(&write).expect_status(2).stderr.contains("no garment to write"));
}

#[test]
fn targets_that_are_no_targets() {
    let (record, k) = (three("36", "35"), linear(400.0));
    let files = [("record.yaml", record.as_str()), ("k400.yaml", &k)];
    for (args, said) in [
        (&["--target", "27"][..], "has no unit"),
        (&["--target", "27mmHg"], "--fall-to 60%"),
        (&["--target", "27mmHg", "--fall-to", "60"], "no share"),
        (&["--target", "27mmHg", "--fall-to", "0%"], "no share"),
        (&["--target", "class=2"], "read only with its scheme"),
        (&["--target", "class=9", "--scheme", "ral-gz-387-1"], "is no class of"),
        (&["--target", "class=4", "--scheme", "ral-gz-387-1"], "open at one end"),
        (&["--target", "class=2", "--scheme", "ral-gz-387-2"], "no scheme for the leg"),
        (&["--target", "ankle=27,wrist=3"], "is no landmark of the leg"),
        (&["--target", "ankle=27,ankle=20"], "stands twice"),
        (&["--target", "ankle=27,mid-thigh=12"], "no girth at the mid thigh"),
        (&["--target", "900mmHg", "--fall-to", "60%"], "at most 200 mmHg"),
        (&[], "nothing is prescribed"),
    ] {
        let all = [&["pattern", "record.yaml", "--fabric", "k400.yaml"], args].concat();
        let ran = ran(&files, &all).expect_status(2);
        assert!(ran.stderr.contains(said) && ran.stdout.is_empty(), "{args:?}: {}", ran.stderr);
    }
}

#[test]
fn a_bench_test_becomes_a_fabric() {
    let shown = run(&["fabric", "demo/knit-r4-bench.yaml", "--format", "json"]).expect_status(0).json();
    assert_eq!(word(&shown, "/bench"), "strip");
    // 100 g on 5 cm: 0.98 N over 0.05 m (derived); mean of 21.7, 21.8 and 21.6 on 20 cm.
    near(figure(&shown, "/curve/1/tension_n_per_m"), 19.613_3, 1e-12);
    near(figure(&shown, "/curve/1/stretch_percent"), 8.5, 1e-12);
    assert_eq!(word(&shown, "/tension_sd_from"), "spread of the pulls about the curve");
    let text = run(&["fabric", "demo/knit-r4-bench.yaml"]).expect_status(0);
    assert!(text.stdout.contains('×') && text.stdout.contains("% stretch"), "{}", text.stdout);
    let place = folder(&[]);
    let file = place.path().join("curve.yaml");
    let args = ["fabric", "demo/knit-r4-bench.yaml", "--write", file.to_str().unwrap(), "--format", "json"];
    run(&args).expect_status(0);
    let again = run(&["fabric", file.to_str().unwrap(), "--format", "json"]).expect_status(0).json();
    near(figure(&again, "/curve/6/stretch_percent"), figure(&shown, "/curve/6/stretch_percent"), 1e-9);
}

#[test]
fn what_is_asked_is_named_once() {
    let misuse =
        |args: &[&str]| run(&[&["gradient", "demo/first-visit.yaml"], args].concat()).expect_status(2).stderr;
    assert!(misuse(&[]).contains("--garment"));
    assert!(misuse(&["--chart", "demo/sleeve-chart-a.yaml"]).contains("--size"));
    assert!(misuse(&["--garment", "a.yaml", "--readings"]).contains("cannot be used with"));
    let said = misuse(&["--chart", "demo/sleeve-chart-a.yaml", "--size", "9"]);
    assert!(said.contains("`9` is no size of") && said.contains("`5`"), "{said}");
    let said = misuse(&["--chart", "demo/stocking-chart-a.yaml", "--size", "1"]);
    assert!(said.contains("is for the leg"), "{said}");
    let said = misuse(&["--garment", "demo/narrow-ankle-garment.yaml"]);
    assert!(said.contains("is for the leg") && said.contains("limb: leg"), "{said}");
}
