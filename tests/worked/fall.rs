//! Which marks are compared, when a fall counts as judged, and what each grade does: by hand from the
//! rules of graduation.

use serde_json::{Value, json};

use crate::direct::{arm, chart_of, figure, findings, has, leg, linear, near, report, word};

/// Φ, by its series (Abramowitz & Stegun 26.2.11; published): exact to double precision for |z| below 6.
fn phi(z: f64) -> f64 {
    let (mut term, mut sum, mut n) = (z, z, 1.0);
    while term.abs() > 1e-18 {
        n += 2.0;
        term *= z * z / n;
        sum += term;
    }
    0.5 + sum * (-z * z / 2.0).exp() / (2.0 * std::f64::consts::PI).sqrt()
}

/// mmHg of a linear fabric of `k` N/m, relaxed `c0`, girth `c`, cm: 2πk(1/C0 − 1/C) (derived).
fn law(k: f64, c0: f64, c: f64) -> f64 {
    200.0 * std::f64::consts::PI * k / 133.322_387_415 * (1.0 / c0 - 1.0 / c)
}

/// SD of it by tape (0.35 cm) and relaxed girth (0.3 cm) alone, mmHg (derived).
fn own_sd(k: f64, c0: f64, c: f64) -> f64 {
    let slope = |cm: f64| 200.0 * std::f64::consts::PI * k / 133.322_387_415 / (cm * cm);
    (0.35 * slope(c)).hypot(0.3 * slope(c0))
}

/// One arm garment: landmark, position, girth, relaxed girth.
fn sleeve(marks: &[(&str, f64, f64, f64)], head: &str, fabric: Option<&str>) -> Value {
    let list: Vec<String> = marks
        .iter()
        .map(|(name, at, girth, _)| format!("landmark: {name}, at: {at}, girth: {girth}"))
        .collect();
    let list: Vec<&str> = list.iter().map(String::as_str).collect();
    let relaxed: Vec<String> =
        marks.iter().filter(|mark| mark.3 > 0.0).map(|(name, _, _, c0)| format!("{name}: {c0}")).collect();
    let size = format!("1 | wrist: 1-199 | relaxed: {{{}}}", relaxed.join(", "));
    report(&arm(&list), &[(&chart_of("arm", &format!("from: wrist\n{head}"), &[&size]), fabric)])
}

fn pairs(report: &Value) -> Vec<(String, String, Value)> {
    let list = report["graduation"][0]["pairs"].as_array().unwrap().iter();
    let text = |one: &Value, key: &str| one[key].as_str().unwrap().to_owned();
    list.map(|one| (text(one, "distal"), text(one, "proximal"), one["grade"].clone())).collect()
}

#[test]
fn a_pair_by_fabric() {
    let made = sleeve(
        &[("wrist", 0.0, 16.0, 12.0), ("forearm", 14.0, 25.0, 18.5), ("axilla", 42.0, 36.0, 29.0)],
        "to: axilla\n",
        Some(&linear(300.0)),
    );
    let pair = &made["graduation"][0]["pairs"][0];
    let rise = law(300.0, 18.5, 25.0) - law(300.0, 12.0, 16.0);
    let sd = own_sd(300.0, 18.5, 25.0).hypot(own_sd(300.0, 12.0, 16.0));
    near(figure(pair, "/rise_mmhg"), rise, 1e-11);
    near(figure(pair, "/sd_mmhg"), sd, 1e-11);
    // The fabric's error is common to both marks and cannot change the sign.
    near(figure(pair, "/chance"), phi(rise / sd), 1e-11);
    assert!(pair["chance_low"].is_null());
}

#[test]
fn a_pair_by_stretch() {
    // ln(Pj/Pi) = b·ln(ej/ei) + ln(Ci/Cj), b from 0.7 to 1.5 (house rule around J Fiber Bioeng Informatics
    // 2011;4:15); its variance by slopes worked out here from the expression itself (derived).
    let (ci, c0i, cj, c0j) = (16.0_f64, 12.0_f64, 25.0_f64, 18.5_f64);
    let chance = |b: f64| {
        let log = |ci: f64, c0i: f64, cj: f64, c0j: f64| {
            b * ((cj / c0j - 1.0) / (ci / c0i - 1.0)).ln() + (ci / cj).ln()
        };
        let h = 1e-5;
        let slope = |plus: f64, minus: f64| (plus - minus) / (2.0 * h);
        let parts = [
            0.35 * slope(log(ci + h, c0i, cj, c0j), log(ci - h, c0i, cj, c0j)),
            0.30 * slope(log(ci, c0i + h, cj, c0j), log(ci, c0i - h, cj, c0j)),
            0.35 * slope(log(ci, c0i, cj + h, c0j), log(ci, c0i, cj - h, c0j)),
            0.30 * slope(log(ci, c0i, cj, c0j + h), log(ci, c0i, cj, c0j - h)),
        ];
        phi(log(ci, c0i, cj, c0j) / parts.iter().map(|part| part * part).sum::<f64>().sqrt())
    };
    let made = sleeve(&[("wrist", 0.0, ci, c0i), ("forearm", 14.0, cj, c0j)], "to: axilla\n", None);
    let pair = &made["graduation"][0]["pairs"][0];
    let (low, high) = (chance(0.7).min(chance(1.5)), chance(0.7).max(chance(1.5)));
    near(figure(pair, "/chance"), high, 1e-7);
    near(figure(pair, "/chance_low"), low, 1e-7);
    assert!(pair["rise_mmhg"].is_null() && pair["sd_mmhg"].is_null());
    assert_eq!(made["graduation"][0]["basis"], "stretch");
}

#[test]
fn grades_by_stretch_take_the_end_that_speaks_against_them() {
    // The wrist is stretched by a third; relaxed girths of the forearm set the proportion of the stretches.
    let grade = |c0: f64| {
        let made = sleeve(&[("wrist", 0.0, 16.0, 12.0), ("forearm", 14.0, 25.0, c0)], "to: axilla\n", None);
        let pair = &made["graduation"][0]["pairs"][0];
        (word(pair, "/grade").to_owned(), figure(pair, "/chance_low"), figure(pair, "/chance"))
    };
    for tenths in 130..=240 {
        let (grade, low, high) = grade(f64::from(tenths) / 10.0);
        let wanted = if low >= 0.95 {
            "certain"
        } else if low > 0.5 {
            "likely"
        } else if high < 0.2 {
            "none"
        } else if high <= 0.5 {
            "possible"
        } else {
            "undecided"
        };
        assert_eq!(grade, wanted, "{tenths}: {low} to {high}");
    }
}

#[test]
fn a_slack_mark_presses_less_than_any_other() {
    let both = |wrist: f64, forearm: f64, fabric: Option<&str>| {
        let made =
            sleeve(&[("wrist", 0.0, 16.0, wrist), ("forearm", 14.0, 25.0, forearm)], "to: axilla\n", fabric);
        (pairs(&made)[0].2.clone(), made["graduation"][0]["pairs"][0]["chance"].as_f64().unwrap())
    };
    let fabric = linear(300.0);
    for fabric in [None, Some(fabric.as_str())] {
        assert_eq!(both(16.0, 18.0, fabric).0, json!("certain"), "only the upper one touches");
        assert_eq!(both(12.0, 25.0, fabric).0, json!("none"), "only the lower one touches");
        assert_eq!(both(16.0, 25.0, fabric), (json!("none"), 0.0), "neither touches: SD 0, no rise");
    }
}

#[test]
fn pairs_reach_at_least_eight_centimetres() {
    // Marks at 0, 7.99, 14, 15.99 and 23.99: each with the nearest one at least 8 cm below it, and with its
    // neighbour where that stands nearer.
    let made = sleeve(
        &[
            ("wrist", 0.0, 16.0, 12.0),
            ("lower-forearm", 7.99, 20.0, 15.4),
            ("forearm", 14.0, 25.0, 20.0),
            ("upper-arm", 15.99, 27.0, 22.0),
            ("axilla", 23.99, 36.0, 31.0),
        ],
        "to: axilla\n",
        Some(&linear(300.0)),
    );
    let names: Vec<(String, String)> = pairs(&made).into_iter().map(|(one, other, _)| (one, other)).collect();
    let wanted = [
        ("wrist", "lower-forearm"),
        ("lower-forearm", "forearm"),
        ("wrist", "forearm"),
        ("forearm", "upper-arm"),
        ("lower-forearm", "upper-arm"),
        ("upper-arm", "axilla"),
    ];
    let wanted: Vec<_> = wanted.iter().map(|(one, other)| ((*one).to_owned(), (*other).to_owned())).collect();
    assert_eq!(names, wanted, "8.00 cm counts, 7.99 does not");
    let ends = &made["graduation"][0]["end_to_end"];
    assert_eq!((word(ends, "/distal"), word(ends, "/proximal")), ("wrist", "axilla"));
}

#[test]
fn near_neighbours_count_only_when_certain() {
    let grade = |relaxed: f64, at: f64| {
        let made = sleeve(
            &[("wrist", 0.0, 16.0, 12.0), ("lower-forearm", at, 20.0, relaxed), ("axilla", 42.0, 36.0, 31.0)],
            "to: axilla\n",
            Some(&linear(300.0)),
        );
        (pairs(&made)[0].2.clone(), figure(&made, "/graduation/0/pairs/0/chance"))
    };
    // A rise that is likely, but not certain: told at 8 cm, not at 7.99.
    let (far, chance) = grade(14.0, 8.0);
    assert_eq!(far, json!("likely"), "{chance}");
    assert_eq!(grade(14.0, 7.99), (json!("none"), chance));
    // A certain one is told at any distance.
    let (far, chance) = grade(12.8, 8.0);
    assert_eq!(far, json!("certain"), "{chance}");
    assert_eq!(grade(12.8, 7.99).0, json!("certain"));
}

#[test]
fn a_mark_that_is_not_estimated_leaves_the_fall_open() {
    let short = "tapeline: fabric/1\nlabel: short\ncurve: [{stretch: 0 %, tension: 0 N/m}, {stretch: 40 %, tension: 120 N/m}]\n";
    let made = sleeve(
        &[
            ("wrist", 0.0, 16.0, 12.0),
            ("lower-forearm", 7.0, 20.0, 12.0),
            ("forearm", 14.0, 25.0, 20.0),
            ("axilla", 42.0, 36.0, 31.0),
        ],
        "to: axilla\n",
        Some(short),
    );
    // The lower forearm stands nearer than 8 cm to both neighbours, yet nothing is known of it.
    assert_eq!(pairs(&made)[0], ("wrist".to_owned(), "lower-forearm".to_owned(), json!(null)));
    assert_eq!(word(&made, "/graduation/0/verdict"), "undecided");
    assert_eq!(made["graduation"][0]["judged"], false);
    assert_eq!(word(&made, "/charts/0/outcome"), "unproven");
}

#[test]
fn what_makes_a_fall_judged() {
    let all = [
        ("wrist", 0.0, 16.0, 12.0),
        ("forearm", 14.0, 25.0, 20.0),
        ("elbow", 23.0, 27.0, 22.0),
        ("upper-arm", 33.0, 31.0, 26.0),
        ("axilla", 42.0, 36.0, 31.0),
    ];
    let judged = |keep: &[&str], head: &str| {
        let marks: Vec<(&str, f64, f64, f64)> = all
            .iter()
            .map(|mark| if keep.contains(&mark.0) { *mark } else { (mark.0, mark.1, mark.2, 0.0) })
            .collect();
        let made = sleeve(&marks, head, Some(&linear(300.0)));
        let judged = made["graduation"][0]["judged"] == true;
        let outcome = word(&made, "/outcome").to_owned();
        assert_eq!(judged, outcome == "try-on", "{keep:?} {head} {outcome}");
        assert_eq!(judged, !findings(&made).iter().any(|(id, _)| id == "gradient-not-judged"));
        judged
    };
    let top = "to: axilla\n";
    assert!(judged(&["wrist", "forearm", "elbow", "upper-arm", "axilla"], top));
    assert!(judged(&["wrist", "forearm", "axilla"], top), "one mark between is enough");
    assert!(judged(&["wrist", "upper-arm", "axilla"], top));
    assert!(!judged(&["wrist", "axilla"], top), "no mark between");
    assert!(!judged(&["wrist", "elbow", "axilla"], top), "the joint is no mark between");
    assert!(!judged(&["forearm", "upper-arm", "axilla"], top), "no reference");
    assert!(!judged(&["wrist", "forearm", "upper-arm"], top), "no top");
    assert!(judged(&["wrist", "forearm", "upper-arm"], "to: upper-arm\n"));
    // A garment that ends at the joint ends, for this, at the landmark below it; nothing lies between.
    assert!(!judged(&["wrist", "forearm", "elbow"], "to: elbow\n"));
    // Marks beyond the garment's end are no marks between.
    assert!(!judged(&["wrist", "upper-arm", "axilla"], "to: forearm\n"));
}

#[test]
fn a_garment_that_ends_at_the_knee() {
    let marks = [
        "landmark: ankle, at: 11, girth: 22",
        "landmark: lower-calf, at: 20, girth: 29",
        "landmark: below-knee, at: 40, girth: 35",
        "landmark: knee, at: 46, girth: 37",
    ];
    let size = "1 | ankle: 20-24 | relaxed: {ankle: 16, lower-calf: 22.5, below-knee: 29, knee: 31}";
    let chart = chart_of("leg", "from: ankle\nto: knee\n", &[size]);
    let made = report(&leg(&marks), &[(&chart, Some(&linear(400.0)))]);
    assert_eq!(made["graduation"][0]["judged"], true);
    assert!(pairs(&made).iter().all(|(one, other, _)| one != "knee" && other != "knee"));
    assert_eq!(made["pressure"][0]["marks"].as_array().unwrap().len(), 4, "printed, not judged");
}

#[test]
fn hand_and_foot_are_printed_and_not_judged() {
    let made = sleeve(
        &[
            ("hand", -8.0, 20.0, 12.0),
            ("wrist", 0.0, 16.0, 12.0),
            ("forearm", 14.0, 25.0, 20.0),
            ("axilla", 42.0, 36.0, 31.0),
        ],
        "to: axilla\n",
        Some(&linear(300.0)),
    );
    assert!(
        figure(&made, "/pressure/0/marks/0/pressure_mmhg")
            > figure(&made, "/pressure/0/marks/1/pressure_mmhg")
    );
    assert!(pairs(&made).iter().all(|(one, _, _)| one != "hand"));
    assert_eq!(word(&made, "/graduation/0/verdict"), "none");
}

#[test]
fn what_each_grade_does() {
    let made = |relaxed: f64, k: f64| {
        sleeve(
            &[("wrist", 0.0, 16.0, 12.0), ("forearm", 14.0, 25.0, relaxed), ("axilla", 42.0, 36.0, 33.0)],
            "to: axilla\n",
            Some(&linear(k)),
        )
    };
    let seen = |relaxed: f64, k: f64| {
        let made = made(relaxed, k);
        let grade = word(&made, "/graduation/0/verdict").to_owned();
        let severity =
            findings(&made).into_iter().find(|(id, _)| id == "pressure-rises").map(|(_, weight)| weight);
        (grade, severity.unwrap_or_default(), word(&made, "/charts/0/outcome").to_owned())
    };
    let is = |relaxed, k, grade: &str, weight: &str, outcome: &str| {
        assert_eq!(seen(relaxed, k), (grade.to_owned(), weight.to_owned(), outcome.to_owned()), "{relaxed}");
    };
    is(18.0, 300.0, "none", "", "try-on");
    is(16.8, 300.0, "possible", "care", "try-on");
    is(16.2, 300.0, "likely", "review", "refer");
    is(15.0, 300.0, "certain", "review", "made-to-measure");
    // A certain rise of less than 3 mmHg is a review and takes no size out: the same limb under a weak knit.
    let weak = made(15.0, 60.0);
    let rise = figure(&weak, "/graduation/0/largest_rise/rise_mmhg");
    assert!((0.0..3.0).contains(&rise), "{rise}");
    is(15.0, 60.0, "certain", "review", "refer");
    assert_eq!(word(&weak, "/charts/0/size"), "1");
    // By stretch alone there is no mmHg: every certain rise takes the size out.
    let stretch = sleeve(
        &[("wrist", 0.0, 16.0, 12.0), ("forearm", 14.0, 25.0, 13.0), ("axilla", 42.0, 36.0, 33.0)],
        "to: axilla\n",
        None,
    );
    assert_eq!(word(&stretch, "/graduation/0/verdict"), "certain");
    assert_eq!(word(&stretch, "/charts/0/verdict"), "made-to-measure");
}

#[test]
fn the_chance_of_the_claimed_class() {
    // Band ends against estimate and whole SD, the fabric's included (derived).
    let marks = [("wrist", 0.0, 16.0, 12.0), ("forearm", 14.0, 25.0, 20.0), ("axilla", 42.0, 36.0, 33.0)];
    let claim = |class: &str, scheme: &str, k: f64| {
        sleeve(&marks, &format!("to: axilla\nscheme: {scheme}\nclass: \"{class}\"\n"), Some(&linear(k)))
    };
    let p = law(300.0, 12.0, 16.0);
    let sd = own_sd(300.0, 12.0, 16.0).hypot(0.05 * p);
    let made = claim("2", "ral-gz-387-2", 300.0);
    let chance = figure(&made, "/pressure/0/reference/claimed_probability");
    near(chance, phi((32.0 - p) / sd) - phi((23.0 - p) / sd), 1e-10);
    assert_eq!(word(&made, "/pressure/0/reference/class"), "2", "{p} mmHg");
    // Below 0.05 care, at more none.
    assert!(!has(&made, "class-missed", "care"));
    let weak = claim("2", "ral-gz-387-2", 120.0);
    assert!(figure(&weak, "/pressure/0/reference/claimed_probability") < 0.05);
    assert!(has(&weak, "class-missed", "care"));
    // An open end: 1 for the missing upper one.
    let open = claim("1", "au-guideline", 300.0);
    near(figure(&open, "/pressure/0/reference/claimed_probability"), phi((20.0 - p) / sd), 1e-10);
}

#[test]
fn above_sixty_mmhg_is_reviewed() {
    let at = |k: f64| {
        sleeve(
            &[("wrist", 0.0, 16.0, 12.0), ("forearm", 14.0, 25.0, 20.0), ("axilla", 42.0, 36.0, 33.0)],
            "to: axilla\n",
            Some(&linear(k)),
        )
    };
    // law(k, 12, 16) reaches 60 mmHg at k = 60/law(1, 12, 16).
    let k = 60.0 / law(1.0, 12.0, 16.0);
    assert!(!has(&at(k * 0.9999), "pressure-high", "review"));
    assert!(has(&at(k * 1.0001), "pressure-high", "review"));
}
