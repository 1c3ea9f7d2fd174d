//! Which size is chosen, worked out by hand from the rules of sizing.

use serde_json::{Value, json};

use crate::direct::{ARM_ANSWERS, arm, chart_of, figure, findings, has, linear, near, report, word};

/// An arm with these girths at wrist, forearm and axilla.
fn three(wrist: &str, forearm: &str, axilla: &str) -> String {
    arm(&[
        &format!("landmark: wrist, at: 0, girth: {wrist}"),
        &format!("landmark: forearm, at: 14, girth: {forearm}"),
        &format!("landmark: axilla, at: 42, girth: {axilla}"),
    ])
}

fn against(record: &str, head: &str, sizes: &[&str]) -> Value {
    report(record, &[(&chart_of("arm", head, sizes), None)])
}

/// Verdict, size and nearest of the chart.
fn choice(report: &Value) -> (String, Value, Value) {
    let chart = &report["charts"][0];
    (word(chart, "/verdict").to_owned(), chart["size"].clone(), chart["nearest"].clone())
}

fn is(report: &Value, verdict: &str, size: Value, nearest: Value) {
    assert_eq!(choice(report), (verdict.to_owned(), size, nearest));
}

#[test]
fn closed_ends_and_the_edge() {
    // Closed intervals; an edge is inside with a margin below 0.5 cm.
    for (girth, verdict, margin, direction) in [
        ("13.99", "outside", -0.01, json!("loose")),
        ("14", "edge", 0.0, json!(null)),
        ("14.49", "edge", 0.49, json!(null)),
        ("14.5", "inside", 0.5, json!(null)),
        ("15.5", "inside", 0.5, json!(null)),
        ("15.51", "edge", 0.49, json!(null)),
        ("16", "edge", 0.0, json!(null)),
        ("16.01", "outside", -0.01, json!("tight")),
    ] {
        let made =
            against(&arm(&[&format!("landmark: wrist, at: 0, girth: {girth}")]), "", &["1 | wrist: 14-16"]);
        let measure = &made["charts"][0]["sizes"][0]["measures"][0];
        assert_eq!(measure["verdict"], verdict, "{girth}");
        assert_eq!(figure(measure, "/margin_cm"), margin, "{girth}");
        assert_eq!(measure["direction"], direction, "{girth}");
    }
}

#[test]
fn the_greatest_smallest_margin_relative_to_its_width() {
    // Wrist 16 in 14–18 leaves 2 of 4; in 15.5–17.5 it leaves 0.5 of 2; in 13–20 it leaves 3 of 7.
    let record = arm(&["landmark: wrist, at: 0, girth: 16"]);
    let made = against(&record, "", &["a | wrist: 13-20", "b | wrist: 14-18", "c | wrist: 15.5-17.5"]);
    is(&made, "size", json!("b"), json!(null));
    // 3 of 7 is greater than 0.5 of 2, though 0.5 of 1 would win.
    let made = against(&record, "", &["a | wrist: 13-20", "c | wrist: 15.5-17.5"]);
    is(&made, "size", json!("a"), json!(null));
    // The smallest of all measures counts: a leaves 1/2 at the wrist and 1/10 at the forearm, b 1/4 and 1/4.
    let record = arm(&["landmark: wrist, at: 0, girth: 16", "landmark: forearm, at: 14, girth: 25"]);
    let made =
        against(&record, "", &["a | wrist: 14-18, forearm: 16-26", "b | wrist: 15-19, forearm: 24-28"]);
    is(&made, "size", json!("b"), json!(null));
}

#[test]
fn an_exact_tie() {
    // Wrist 16 lies 0.5 below the top of a and 0.5 above the foot of b.
    let record = arm(&["landmark: wrist, at: 0, girth: 16"]);
    let sizes = ["a | wrist: 14.5-16.5", "b | wrist: 15.5-17.5"];
    is(&against(&record, "", &sizes), "between", json!(null), json!(null));
    is(&against(&record, "between_sizes: refer\n", &sizes), "between", json!(null), json!(null));
    assert_eq!(word(&against(&record, "", &sizes), "/outcome"), "refer");
    is(&against(&record, "between_sizes: smaller\n", &sizes), "size", json!("a"), json!(null));
    is(&against(&record, "between_sizes: larger\n", &sizes), "size", json!("b"), json!(null));
    // A third of a width is no binary fraction: 16 in 14–20 and in 13–22 leaves exactly 1/3 of each.
    let made = against(&record, "", &["a | wrist: 13-22", "b | wrist: 14-20"]);
    is(&made, "between", json!(null), json!(null));
    // Three alike: the first and the last of them.
    let sizes = ["a | wrist: 14-18", "b | wrist: 14-18", "c | wrist: 12-20"];
    is(&against(&record, "between_sizes: larger\n", &sizes), "size", json!("c"), json!(null));
    is(&against(&record, "between_sizes: smaller\n", &sizes), "size", json!("a"), json!(null));
}

#[test]
fn open_ranges_do_not_limit_the_choice() {
    // 16 is inside `under 20` by 4 and inside `over 12` by 4; both ranges have no width.
    let record = arm(&["landmark: wrist, at: 0, girth: 16", "landmark: forearm, at: 14, girth: 25"]);
    let sizes = ["a | wrist: under 16, forearm: 20-30", "b | wrist: over 15, forearm: 23-31"];
    // a leaves 5 of 10 at the forearm, b 2 of 8; the open wrist of a, with no room left, does not count.
    is(&against(&record, "", &sizes), "size", json!("a"), json!(null));
    // Closed at their end.
    for (girth, verdict) in [("16", "edge"), ("16.01", "outside"), ("15.5", "inside"), ("3", "inside")] {
        let record = arm(&[&format!("landmark: wrist, at: 0, girth: {girth}")]);
        let made = against(&record, "", &["a | wrist: under 16"]);
        assert_eq!(made["charts"][0]["sizes"][0]["measures"][0]["verdict"], verdict, "{girth}");
    }
    // Every range open: no limit at all beats any limit.
    let record = arm(&["landmark: wrist, at: 0, girth: 16"]);
    let made = against(&record, "", &["a | wrist: 12-20", "b | wrist: over 15.9"]);
    is(&made, "size", json!("b"), json!(null));
}

#[test]
fn a_gap_between_two_sizes() {
    let sizes = ["1 | wrist: 14-16, forearm: 20-23", "2 | wrist: 17-19, forearm: 24-27"];
    let at = |wrist: &str, forearm: &str, head: &str| {
        against(
            &arm(&[
                &format!("landmark: wrist, at: 0, girth: {wrist}"),
                &format!("landmark: forearm, at: 14, girth: {forearm}"),
            ]),
            head,
            &sizes,
        )
    };
    // Every girth in [high of 1, low of 2]: 16–17 and 23–24.
    for (wrist, forearm) in
        [("16.5", "23.5"), ("16.01", "23.01"), ("16.99", "23.99"), ("16", "23.01"), ("17", "23.99")]
    {
        is(&at(wrist, forearm, ""), "between", json!(null), json!(null));
        assert_eq!(word(&at(wrist, forearm, ""), "/outcome"), "refer");
    }
    // One girth in a size and one in the gap is no gap.
    is(&at("15", "23.5", ""), "made-to-measure", json!(null), json!("1"));
    // A pick misses by at most 0.5 cm everywhere.
    is(&at("16.5", "23.5", "between_sizes: smaller\n"), "between", json!("1"), json!(null));
    is(&at("16.5", "23.5", "between_sizes: larger\n"), "between", json!("2"), json!(null));
    is(&at("16.51", "23.5", "between_sizes: smaller\n"), "between", json!(null), json!(null));
    is(&at("16.51", "23.5", "between_sizes: larger\n"), "between", json!("2"), json!(null));
    is(&at("16.5", "23.49", "between_sizes: larger\n"), "between", json!(null), json!(null));
    // A picked size stays between, and someone looks.
    assert_eq!(word(&at("16.5", "23.5", "between_sizes: larger\n"), "/outcome"), "refer");
    assert_eq!(word(&at("16.5", "23.5", "between_sizes: larger\n"), "/pressure/0/size"), "2");
}

#[test]
fn the_nearest_size_when_none_holds() {
    // Smallest worst miss, then smallest sum of misses, then the order of the file.
    let record = three("16", "25", "36");
    let made = against(
        &record,
        "",
        &[
            "a | wrist: 10-15, forearm: 20-24.5, axilla: 30-40",
            "b | wrist: 16.8-18, forearm: 26.5-27, axilla: 30-40",
            "c | wrist: 17-19, forearm: 20-30, axilla: 30-40",
        ],
    );
    // Worst misses 1.0, 1.5, 1.0; sums 1.5, 2.3, 1.0.
    is(&made, "made-to-measure", json!(null), json!("c"));
    let made = against(
        &record,
        "",
        &[
            "a | wrist: 13-15, forearm: 20-30, axilla: 30-40",
            "b | wrist: 17-19, forearm: 20-30, axilla: 30-40",
        ],
    );
    // In the gap by the wrist alone; the other girths lie in both sizes.
    is(&made, "made-to-measure", json!(null), json!("a"));
    let measure = &made["charts"][0]["sizes"][0]["measures"][0];
    assert_eq!((word(measure, "/direction"), figure(measure, "/margin_cm")), ("tight", -1.0));
    assert_eq!(
        made["charts"][0]["wanted"],
        json!([
            {"measure": "wrist", "sizes": []},
            {"measure": "forearm", "sizes": ["a", "b"]},
            {"measure": "axilla", "sizes": ["a", "b"]},
        ])
    );
}

#[test]
fn sizes_apart_ask_for_care() {
    let sizes = [
        "1 | wrist: 12-14, axilla: 26-29",
        "2 | wrist: 14.1-16, axilla: 29.1-32",
        "3 | wrist: 16.1-18, axilla: 32.1-35",
    ];
    let at = |wrist: &str, axilla: &str| against(&three(wrist, "25", axilla), "", &sizes);
    assert!(has(&at("13", "34"), "sizes-apart", "care"), "sizes 1 and 3");
    assert!(!findings(&at("13", "31")).iter().any(|(id, _)| id == "sizes-apart"), "sizes 1 and 2");
}

#[test]
fn lengths_pick_the_variant() {
    let size = |label: &str, wrist: &str| {
        format!(
            "{label} | wrist: {wrist} | lengths: [{{variant: short, wrist to axilla: 36-40}}, {{variant: regular, wrist to axilla: 40-44}}]"
        )
    };
    let sizes = [size("1", "14-18"), size("2", "18-22")];
    let sizes: Vec<&str> = sizes.iter().map(String::as_str).collect();
    let at = |length: &str| {
        let record = three("16", "25", "36") + &format!("lengths: {{wrist to axilla: {length}}}\n");
        against(&record, "", &sizes)
    };
    for (length, variant) in
        [("36", "short"), ("39.99", "short"), ("40", "short"), ("40.01", "regular"), ("44", "regular")]
    {
        is(&at(length), "size", json!("1"), json!(null));
        assert_eq!(word(&at(length), "/charts/0/variant"), variant, "{length}");
    }
    for length in ["35.99", "44.01"] {
        let made = at(length);
        assert_eq!(word(&made, "/charts/0/verdict"), "made-to-measure", "{length}");
        assert_eq!(word(&made, "/charts/0/sizes/0/verdict"), "outside");
    }
    // A length that is not in the record: not judged, and said which.
    let made = against(&three("16", "25", "36"), "", &sizes);
    is(&made, "not-judged", json!(null), json!(null));
    assert_eq!(word(&made, "/charts/0/outcome"), "incomplete");
}

#[test]
fn a_missing_girth_is_not_judged() {
    let record = arm(&["landmark: wrist, at: 0, girth: 16"]);
    let made = against(&record, "", &["1 | wrist: 14-18, forearm: 20-30"]);
    is(&made, "not-judged", json!(null), json!(null));
    let measure = &made["charts"][0]["sizes"][0]["measures"][1];
    assert_eq!((word(measure, "/verdict"), &measure["girth_cm"]), ("not-judged", &json!(null)));
}

#[test]
fn an_infection_puts_sizing_off() {
    // Published (Lymphoedema Framework 2006): postpone measuring and fitting; girths taken now are not used.
    let answers = ARM_ANSWERS.replace(
        "none_of: [circulation, heart, nerves, infection, ",
        "yes: [acute-infection], none_of: [circulation, heart, nerves, infection, ",
    );
    let record = three("16", "25", "36").replace(ARM_ANSWERS, &answers);
    let made = against(&record, "", &["1 | wrist: 14-18"]);
    is(&made, "not-judged", json!(null), json!(null));
    assert_eq!(word(&made, "/outcome"), "stop");
    assert_eq!(made["pressure"], json!([]));
}

#[test]
fn the_chance_that_the_true_girths_lie_in_the_ranges() {
    // Φ((high − C)/s) − Φ((low − C)/s) with s 0.35 cm, multiplied (derived). Φ(1) = 0.841344746068543,
    // Φ(2) = 0.977249868051821 (tables of the normal distribution).
    let one = against(&arm(&["landmark: wrist, at: 0, girth: 16"]), "", &["1 | wrist: 15.65-16.35"]);
    let inside = 2.0 * 0.841_344_746_068_543 - 1.0;
    near(figure(&one, "/charts/0/sizes/0/inside_probability"), inside, 1e-14);
    let two = against(&three("16", "25", "36"), "", &["1 | wrist: 15.65-16.35, forearm: 24.3-25.7"]);
    let both = inside * (2.0 * 0.977_249_868_051_821 - 1.0);
    near(figure(&two, "/charts/0/sizes/0/inside_probability"), both, 1e-13);
    // Read four times: s halves, one SD becomes two.
    let four = against(
        &arm(&["landmark: wrist, at: 0, girth: 16, again: [16, 16, 16]"]),
        "",
        &["1 | wrist: 15.65-16.35"],
    );
    near(figure(&four, "/charts/0/sizes/0/inside_probability"), 2.0 * 0.977_249_868_051_821 - 1.0, 1e-14);
    // Exactly on an edge of a wide range: one half; on an open range's end too.
    for range in ["16-26", "over 16", "under 16"] {
        let edge =
            against(&arm(&["landmark: wrist, at: 0, girth: 16"]), "", &[&format!("1 | wrist: {range}")]);
        near(figure(&edge, "/charts/0/sizes/0/inside_probability"), 0.5, 1e-12);
        // Not below a half, so no care.
        assert!(!has(&edge, "inside-unsure", "care"));
    }
    let unsure = against(&arm(&["landmark: wrist, at: 0, girth: 16"]), "", &["1 | wrist: 16-16.5"]);
    assert!(has(&unsure, "inside-unsure", "care"));
}

#[test]
fn a_certain_rise_takes_a_size_out_of_the_choice() {
    // Linear 400 N/m: P = 2πk(1/C0 − 1/C) = 1885.11/C0 − 1885.11/C mmHg with lengths in cm (derived, k 400).
    let record = three("16", "25", "36");
    let good = "forearm: 19.5, axilla: 30";
    let bad = "forearm: 16, axilla: 30";
    let size = |label: &str, wrist: &str, rest: &str| {
        format!("{label} | wrist: {wrist}, forearm: 20-30, axilla: 30-40 | relaxed: {{wrist: 12.5, {rest}}}")
    };
    let made = |sizes: &[String]| {
        let sizes: Vec<&str> = sizes.iter().map(String::as_str).collect();
        report(&record, &[(&chart_of("arm", "from: wrist\nto: axilla\n", &sizes), Some(&linear(400.0)))])
    };
    let p =
        |c0: f64, c: f64| 2.0 * std::f64::consts::PI * 400.0 / 133.322_387_415 * 100.0 * (1.0 / c0 - 1.0 / c);
    assert!(p(16.0, 25.0) > p(12.5, 16.0) + 3.0 && p(19.5, 25.0) < p(12.5, 16.0) - 3.0, "as intended");
    // The better margin is reversed: the other size is chosen.
    let two = made(&[size("1", "14-18", bad), size("2", "15-18", good)]);
    is(&two, "size", json!("2"), json!(null));
    assert_eq!(two["charts"][0]["sizes"][0]["reversed"], true);
    assert_eq!(two["charts"][0]["sizes"][1]["reversed"], false);
    assert_eq!(word(&two, "/outcome"), "try-on");
    // All inside sizes reversed: made to measure, and no size is named.
    let all = made(&[size("1", "14-18", bad), size("2", "15-18", bad)]);
    is(&all, "made-to-measure", json!(null), json!(null));
    // A size that is outside has no say.
    let outside = made(&[size("1", "14-18", bad), size("2", "17-20", good)]);
    is(&outside, "made-to-measure", json!(null), json!(null));
}

#[test]
fn folds_make_every_chart_made_to_measure_and_keep_the_size() {
    for key in ["folds", "distortion"] {
        let record = three("16", "25", "36").replace(&format!("{key}: no"), &format!("{key}: yes"));
        let made = against(&record, "", &["1 | wrist: 14-18"]);
        is(&made, "size", json!("1"), json!(null));
        assert_eq!(word(&made, "/charts/0/outcome"), "made-to-measure");
        assert_eq!(word(&made, "/outcome"), "made-to-measure");
    }
}

#[test]
fn materials_and_hand_part_need_a_chosen_size() {
    let record = three("16", "25", "36").replace("allergies: []", "allergies: [Latex]");
    let with = |contains: &str| against(&record, contains, &["1 | wrist: 14-18"]);
    let stop = with("contains: [polyamide, latex]\n");
    assert_eq!(word(&stop, "/charts/0/outcome"), "stop");
    assert!(has(&stop, "allergen", "stop"));
    let unknown = with("");
    assert!(has(&unknown, "materials-unknown", "review"));
    assert_eq!(word(&unknown, "/charts/0/outcome"), "refer");
    assert_eq!(word(&with("contains: [polyamide]\n"), "/charts/0/outcome"), "unproven");
    // No size chosen: no finding about the garment.
    let none = against(&record, "contains: [latex]\n", &["1 | wrist: 10-11"]);
    assert!(!has(&none, "allergen", "stop"));
    let swollen = three("16", "25", "36").replace("hand_swelling: no", "hand_swelling: yes");
    for (head, wanted) in
        [("", true), ("hand_part: no\n", true), ("hand_part: unknown\n", true), ("hand_part: yes\n", false)]
    {
        let made = against(&swollen, head, &["1 | wrist: 14-18"]);
        assert_eq!(has(&made, "hand-part", "review"), wanted, "{head}");
    }
}
