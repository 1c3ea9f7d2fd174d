//! How readings are stored, averaged, stepped and printed.

use crate::direct::{ARM_HEAD, arm, chart_of, figure, linear, report};

/// The stored girth of a mark, cm, as the estimate uses it.
fn stored(girth: &str) -> f64 {
    let record = arm(&[&format!("landmark: forearm, at: 14 cm, girth: {girth}")]);
    let chart = chart_of("arm", "", &["1 | forearm: 1-199 | relaxed: {forearm: 12}"]);
    figure(&report(&record, &[(&chart, None)]), "/pressure/0/marks/0/girth_cm")
}

#[test]
fn readings_are_stored_to_a_tenth_of_a_millimetre_ties_away_from_zero() {
    // An inch is 25.4 mm (definition): 6.65 in are 168.91 mm, 9.45 in 240.03, 9.53 in 242.062.
    for (written, cm) in [
        ("16.9", 16.9),
        ("16.904", 16.90),
        ("16.905", 16.91),
        ("16.915", 16.92),
        ("16.9049999999", 16.90),
        ("169.05 mm", 16.91),
        ("169.04 mm", 16.90),
        ("0.169 m", 16.90),
        ("0.16905 m", 16.91),
        ("6.65 in", 16.89),
        ("9.45 in", 24.00),
        ("9.53 in", 24.21),
    ] {
        assert_eq!(stored(written), cm, "{written}");
    }
}

#[test]
fn a_mean_is_of_the_stored_readings_and_stored_alike() {
    for (written, cm) in [
        ("25.6, again: 25.8", 25.7),
        ("25.60, again: 25.61", 25.61),
        ("25.61, again: 25.62", 25.62),
        ("16.9, again: [17, 17]", 16.97),
        ("16.9, again: [16.9, 17]", 16.93),
        // 9.45 and 9.53 in are stored as 24.00 and 24.21; the mean of the inches would be 24.10.
        ("9.45 in, again: 9.53 in", 24.11),
    ] {
        assert_eq!(stored(written), cm, "{written}");
    }
}

/// The first measure of the only size.
fn fit(girth: &str, range: &str, head: &str) -> serde_json::Value {
    let record = arm(&[&format!("landmark: forearm, at: 14, girth: {girth}")]);
    let chart = chart_of("arm", head, &[&format!("1 | forearm: {range} | relaxed: {{forearm: 12}}")]);
    report(&record, &[(&chart, None)])
}

const MEASURE: &str = "/charts/0/sizes/0/measures/0";

#[test]
fn a_girth_is_rounded_to_the_printed_step_and_the_range_is_not() {
    for (girth, step, compared) in [
        ("24.05", "0.1 cm", 24.1),
        ("24.04", "0.1 cm", 24.0),
        ("24.11", "1 mm", 24.1),
        ("16.75", "0.5 cm", 17.0),
        ("16.74", "0.5 cm", 16.5),
        ("16.25", "0.5 cm", 16.5),
        ("25.49", "1 cm", 25.0),
        ("25.5", "1 cm", 26.0),
        // A quarter of an inch is 0.635 cm, of which 16.9 cm are 26.6: 27 of them are 17.145 cm.
        ("16.9", "0.25 in", 17.15),
        ("16.89", "0.25 in", 17.15),
        ("16.8", "0.25 in", 16.51),
    ] {
        let made = fit(girth, "14.55-30.07", &format!("printed_step: {step}\n"));
        assert_eq!(figure(&made, &format!("{MEASURE}/girth_cm")), compared, "{girth} to {step}");
        assert_eq!(figure(&made, &format!("{MEASURE}/low_cm")), 14.55);
        assert_eq!(figure(&made, &format!("{MEASURE}/high_cm")), 30.07);
        // The stored girth, not the stepped one, makes the stretch.
        let used = figure(&made, "/pressure/0/marks/0/girth_cm");
        assert!((used - girth.parse::<f64>().unwrap()).abs() < 1e-12, "{girth}");
    }
    let made = fit("24.05", "14-30", "");
    assert_eq!(figure(&made, &format!("{MEASURE}/girth_cm")), 24.05);
}

#[test]
fn a_step_can_bring_a_girth_into_its_range_or_out_of_it() {
    let verdict = |girth: &str, step: &str| {
        let made = fit(girth, "24-26", step);
        made.pointer(&format!("{MEASURE}/verdict")).unwrap().as_str().unwrap().to_owned()
    };
    assert_eq!(verdict("26.04", ""), "outside");
    assert_eq!(verdict("26.04", "printed_step: 0.1\n"), "edge");
    assert_eq!(verdict("23.95", "printed_step: 0.1\n"), "edge");
    assert_eq!(verdict("23.94", "printed_step: 0.1\n"), "outside");
    assert_eq!(verdict("25.5", "printed_step: 1\n"), "edge");
    assert_eq!(verdict("26.5", "printed_step: 1\n"), "outside");
}

#[test]
fn a_flat_width_is_doubled_before_it_is_stored() {
    // 7.125 cm flat is 14.25 cm; stored first it would be 7.13 and 14.26.
    let record = arm(&["landmark: forearm, at: 14, girth: 25"]);
    for (flat, relaxed) in
        [("7.125", 14.25), ("7.1", 14.2), ("71.25 mm", 14.25), ("7.1225", 14.25), ("7.1224", 14.24)]
    {
        let chart = chart_of("arm", "", &[&format!("1 | forearm: 14-30 | flat_width: {{forearm: {flat}}}")]);
        let made = report(&record, &[(&chart, None)]);
        assert_eq!(figure(&made, "/pressure/0/marks/0/relaxed_cm"), relaxed, "{flat}");
    }
}

#[test]
fn ranges_in_every_writing() {
    let of = |range: &str| {
        let made = fit("25", range, "");
        let end = |key: &str| made.pointer(&format!("{MEASURE}/{key}")).unwrap().as_f64();
        (end("low_cm"), end("high_cm"), end("margin_cm"))
    };
    for range in [
        "24-26",
        "24-26 cm",
        "24–26 cm",
        "24 to 26 cm",
        "240-260 mm",
        "24 cm - 26 cm",
        "24 cm to 260 mm",
        "240 mm-26 cm",
    ] {
        assert_eq!(of(range), (Some(24.0), Some(26.0), Some(1.0)), "{range}");
    }
    assert_eq!(of("under 26"), (None, Some(26.0), Some(1.0)));
    assert_eq!(of("over 24 cm"), (Some(24.0), None, Some(1.0)));
    assert_eq!(of("25-25"), (Some(25.0), Some(25.0), Some(0.0)));
    // 10 in are 25.4 cm (definition).
    assert_eq!(of("9-10 in"), (Some(22.86), Some(25.4), Some(0.4)));
}

/// A whole arm against a chart with fabric, in a unit of length.
fn in_unit(unit: &str, per_cm: f64) -> serde_json::Value {
    // Multiples of 0.5 in, so that each unit writes the same length exactly.
    let number = |cm: f64| {
        let text = format!("{:.6}", cm * per_cm);
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    };
    let mark = |landmark: &str, at: f64, girth: f64| {
        format!("landmark: {landmark}, at: {}, girth: {}", number(at), number(girth))
    };
    let marks = [
        mark("wrist", 0.0, 16.51),
        mark("forearm", 13.97, 25.4),
        mark("elbow", 22.86, 27.94),
        mark("upper-arm", 33.02, 31.75),
        mark("axilla", 41.91, 36.83),
    ];
    let marks: Vec<&str> = marks.iter().map(String::as_str).collect();
    let units = format!("{{length: {unit}, pressure: mmHg}}");
    let other =
        crate::direct::listed(&marks).replace("  - ", "    - ").replace("marks:", "other_limb:\n  marks:");
    let record = (arm(&marks) + &other).replace("{length: cm, pressure: mmHg}", &units)
        + &format!("lengths: {{wrist to axilla: {}}}\n", number(41.91));
    assert!(record.starts_with(&ARM_HEAD[..20]));
    let range = |low: f64, high: f64| format!("{}-{}", number(low), number(high));
    let size = |label: &str, wider: f64| {
        format!(
            "{label} | wrist: {}, forearm: {}, axilla: {} | relaxed: {{wrist: {}, forearm: {}, axilla: {}}}\n    lengths: [{{wrist to axilla: {}}}]",
            range(15.24 + wider, 17.78 + wider),
            range(22.86 + wider, 27.94 + wider),
            range(33.02 + wider, 39.37 + wider),
            number(12.7 + wider),
            number(17.78 + wider),
            number(27.94 + wider),
            range(40.64, 43.18)
        )
    };
    let head = format!(
        "from: wrist\nto: axilla\nscheme: ral-gz-387-2\nclass: \"2\"\nprinted_step: {}\n",
        number(0.127)
    );
    let chart = chart_of("arm", &head, &[&size("1", 0.0), &size("2", 1.27)])
        .replace("units: {length: cm}", &format!("units: {{length: {unit}}}"));
    report(&record, &[(&chart, Some(&linear(400.0)))])
}

#[test]
fn one_limb_in_four_units_gives_one_report() {
    // cm, mm, m, and inches of 2.54 cm (definition).
    let cm = in_unit("cm", 1.0);
    for (unit, per_cm) in [("mm", 10.0), ("m", 0.01), ("in", 1.0 / 2.54)] {
        assert_eq!(in_unit(unit, per_cm), cm, "{unit}");
    }
    assert_eq!(cm["charts"][0]["verdict"], "size");
    assert!(cm["volume"]["measured_ml"].as_f64().unwrap() > 0.0);
}

#[test]
fn pressures_of_one_limb_in_other_units_give_one_report() {
    // 8 kPa = 80 hPa = 8000 Pa; 1 N/cm = 100 N/m = 100 cN/cm (definitions).
    let leg = |systolic: &str| {
        let text = crate::direct::leg(&["landmark: ankle, at: 11, girth: 22.9"]);
        report(&text.replace("abpi: 1.0", &format!("abpi: 1.0, ankle_systolic: {systolic}")), &[])
    };
    assert_eq!(leg("8 kPa"), leg("80 hPa"));
    assert_eq!(leg("8 kPa"), leg("8000 Pa"));
    assert_eq!(leg("100 mm Hg"), leg("100"));
    let record = arm(&["landmark: forearm, at: 14, girth: 25"]);
    let chart = chart_of("arm", "", &["1 | forearm: 14-30 | relaxed: {forearm: 20}"]);
    let tension = |text: &str| {
        let fabric = format!(
            "tapeline: fabric/1\nlabel: f\ncurve: [{{stretch: 0 %, tension: 0 N/m}}, {{stretch: 50 %, tension: {text}}}]\n"
        );
        figure(&report(&record, &[(&chart, Some(&fabric))]), "/pressure/0/marks/0/pressure_mmhg")
    };
    let one = tension("100 N/m");
    for text in ["1 N/cm", "100 cN/cm"] {
        crate::direct::near(tension(text), one, 1e-12);
    }
    // 1 gf/cm is 0.980665 N/m (standard gravity; definition).
    crate::direct::near(tension("100 gf/cm"), one * 0.980_665, 1e-12);
}
