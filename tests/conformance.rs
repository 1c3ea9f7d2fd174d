//! Cases that any program for this arithmetic can be held to, as data: `tests/conformance`. Each says its source
//! above it or in `basis`; no figure is this program's own output.

use std::collections::BTreeMap;

use serde_yaml::Value;
use tapeline::anatomy::{Landmark, Limb};
use tapeline::garment::{Fabric, Schemes, open_chart, open_fabric};
use tapeline::input::Source;
use tapeline::pressure::{
    Ellipse, Estimate, Spread, WrapPull, estimate_cm, estimate_wrap, laplace_cm, overlap_layers,
    radius_from_chord, reduction_from_stretch, relaxed_for, stretch_from_reduction, tension_for,
};
use tapeline::quantity::{
    Dimension, Units, mmhg, newton_per_metre, phi, pressure_from_mmhg, read_quantity,
    tension_from_newton_per_metre,
};
use tapeline::sizing::{Limits, SizingInput, judge};

use crate::scene::Scene;
use crate::screened::{leg_with, screen};
use crate::sizing::known;

fn cases(file: &str, least: usize) -> Vec<Value> {
    let path = crate::source::root().join("tests/conformance").join(file);
    let cases: Vec<Value> = serde_yaml::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    assert!(cases.len() >= least, "{file}: {} cases", cases.len());
    for case in &cases {
        assert!(case["basis"].as_str().is_some_and(|basis| !basis.is_empty()), "{file}: no basis: {case:?}");
    }
    cases
}

fn number(case: &Value, key: &str) -> f64 {
    case[key].as_f64().unwrap_or_else(|| panic!("no {key}: {case:?}"))
}

fn word<'v>(case: &'v Value, key: &str) -> &'v str {
    case[key].as_str().unwrap_or_else(|| panic!("no {key}: {case:?}"))
}

/// Relative, but for a wanted zero.
#[track_caller]
fn held(found: f64, case: &Value, key: &str) {
    let (wanted, tolerance) = (number(case, key), number(case, "tolerance"));
    assert!((found - wanted).abs() <= tolerance * wanted.abs(), "{key} is {found}: {case:?}");
}

fn fabric(case: &Value) -> Fabric {
    let points: Vec<String> = case["curve"]
        .as_sequence()
        .unwrap()
        .iter()
        .map(|one| {
            let at = |place: usize| one[place].as_f64().unwrap();
            format!("{{stretch: {} %, tension: {} N/m}}", at(0), at(1))
        })
        .collect();
    let text = format!("tapeline: fabric/1\nlabel: knit\nbasis: invented\ncurve: [{}]\n", points.join(", "));
    open_fabric(Source::of_text("knit.yaml", text)).unwrap()
}

fn garment(case: &Value) {
    let optional = |key: &str| case.get(key).and_then(Value::as_f64).unwrap_or_default();
    let spread = Spread {
        girth_cm: optional("sd_girth_cm"),
        relaxed_cm: optional("sd_relaxed_cm"),
        tension: optional("sd_tension"),
    };
    let layers = number(case, "layers") as u32;
    let found =
        estimate_cm(&fabric(case), layers, number(case, "girth_cm"), number(case, "relaxed_cm"), spread);
    match (&found, case["pressure_mmhg"].as_f64()) {
        (Estimate::Beyond { bound }, None) => held(mmhg(*bound), case, "bound_mmhg"),
        (Estimate::Slack, Some(0.0)) => {}
        (Estimate::Pressed(pressed), Some(_)) => {
            held(mmhg(pressed.pressure), case, "pressure_mmhg");
            held(pressed.per_girth, case, "slope_mmhg_per_cm");
            held(pressed.sd(), case, "sd_mmhg");
        }
        _ => panic!("{found:?}: {case:?}"),
    }
}

/// Source: each case of the file says its own.
#[test]
fn pressures() {
    for case in &cases("pressure.yaml", 60) {
        let of = |key: &str| number(case, key);
        match word(case, "kind") {
            "law" => {
                let tension = tension_from_newton_per_metre(of("tension_n_per_m"));
                held(mmhg(laplace_cm(tension, of("girth_cm"))), case, "pressure_mmhg");
            }
            "layers" => {
                let sum: f64 =
                    case["tensions_n_per_m"].as_sequence().unwrap().iter().filter_map(Value::as_f64).sum();
                held(
                    mmhg(laplace_cm(tension_from_newton_per_metre(sum), of("girth_cm"))),
                    case,
                    "pressure_mmhg",
                );
            }
            "tension" => {
                let tension = tension_for(pressure_from_mmhg(of("pressure_mmhg")), of("girth_cm"));
                held(newton_per_metre(tension), case, "tension_n_per_m");
            }
            "wrap" => {
                let wrap = WrapPull {
                    pull_n: of("force_kgf") * 9.806_65,
                    width_cm: of("width_cm"),
                    layers: of("layers"),
                    thickness_cm: of("thickness_cm"),
                };
                let found = estimate_wrap(wrap, of("girth_cm"), 0.0, 0.0);
                held(mmhg(found.pressure().unwrap()), case, "pressure_mmhg");
            }
            "garment" => garment(case),
            "relaxed" => match relaxed_for(&fabric(case), 1, of("girth_cm"), of("pressure_mmhg")) {
                Some(found) => held(found.relaxed_cm, case, "relaxed_cm"),
                None => assert!(case["relaxed_cm"].is_null(), "{case:?}"),
            },
            "stretch" => {
                held(stretch_from_reduction(of("reduction")), case, "stretch");
                held(reduction_from_stretch(of("stretch")), case, "reduction");
            }
            "ellipse" => {
                let oval = Ellipse::from_diameters(of("wide_cm"), of("deep_cm")).unwrap();
                held(oval.girth_cm(), case, "girth_cm");
                held(oval.sharp_over_mean(oval.girth_cm()), case, "sharp");
                held(oval.flat_over_mean(oval.girth_cm()), case, "flat");
            }
            "overlap" => held(overlap_layers(of("overlap")).unwrap(), case, "layers"),
            "chord" => held(radius_from_chord(of("half_width"), of("rise")), case, "radius"),
            other => panic!("unknown kind {other}"),
        }
    }
}

/// Source: definitions of the units.
#[test]
fn units() {
    for case in &cases("units.yaml", 40) {
        let dimension = match word(case, "dimension") {
            "length" => Dimension::Length,
            "pressure" => Dimension::Pressure,
            "tension" => Dimension::Tension,
            "force" => Dimension::Force,
            "mass" => Dimension::Mass,
            "ratio" => Dimension::Ratio,
            other => panic!("unknown dimension {other}"),
        };
        let read = read_quantity(word(case, "text"), dimension, Units::default());
        if case.get("refused").is_some() {
            assert!(read.is_err(), "{case:?}");
            continue;
        }
        let read = read.unwrap_or_else(|fault| panic!("{fault}: {case:?}"));
        match case.get("stored") {
            Some(stored) => assert_eq!(read.tenth_millimetres(), stored.as_i64(), "{case:?}"),
            None => held(read.si(), case, "si"),
        }
    }
}

/// Source: the normal integral; each case of the file says its own.
#[test]
fn chances() {
    for case in &cases("chances.yaml", 20) {
        if word(case, "kind") == "phi" {
            let found = phi(number(case, "z"));
            let gap = (found - number(case, "chance")).abs();
            assert!(gap <= number(case, "tolerance"), "{found}: {case:?}");
            continue;
        }
        let ranges = serde_yaml::to_string(&case["ranges"]).unwrap();
        let limb = if ranges.contains("ankle") { Limb::Leg } else { Limb::Arm };
        let ranges: Vec<String> = ranges.lines().map(|line| format!("      {line}")).collect();
        let text = format!(
            "tapeline: chart/1\nlabel: chart\nlimb: {}\nunits: {{length: cm}}\nsizes:\n  - size: \"1\"\n    girths:\n{}\n",
            limb.name(),
            ranges.join("\n")
        );
        let chart = open_chart(Source::of_text("chart.yaml", text), &Schemes::default()).unwrap().chart;
        let girths = case["girths"].as_mapping().unwrap().iter().map(|(name, one)| {
            let landmark = Landmark::parse(limb, name.as_str().unwrap()).unwrap();
            (landmark, known(one[0].as_f64().unwrap(), one[1].as_u64().unwrap() as u32))
        });
        let input = SizingInput { girths: girths.collect(), lengths: BTreeMap::new() };
        let found = judge(&input, &chart, Limits::default()).sizes[0].inside_chance.unwrap();
        held(found, case, "chance");
    }
}

/// Source: the schemes as published or quoted; each case of the file says its own.
#[test]
fn classes_and_limits() {
    let schemes = Schemes::default();
    for case in &cases("classes.yaml", 80) {
        let scheme = schemes.find(word(case, "scheme")).unwrap();
        if case.get("place").is_some() {
            let found = scheme.place_of(number(case, "pressure_mmhg"), None).unwrap().name();
            assert_eq!(found, word(case, "place"), "{case:?}");
            continue;
        }
        let landmark = |key: &str| Landmark::parse(Limb::Leg, word(case, key)).unwrap();
        let limit = scheme.limit(word(case, "class"), landmark("landmark")).unwrap();
        assert_eq!(limit.of, landmark("of"), "{case:?}");
        assert_eq!((limit.low, limit.high), (case["low"].as_f64(), case["high"].as_f64()), "{case:?}");
    }
}

/// Source: bands fitted to Heinz 2003, J Stat Educ 11(2) (house rule).
#[test]
fn plausible_girths() {
    for case in &cases("plausible.yaml", 50) {
        let girths = case["girths"].as_mapping().unwrap();
        let marks: Vec<String> = girths
            .iter()
            .enumerate()
            .map(|(place, (name, girth))| {
                format!("{}@{}={}", name.as_str().unwrap(), 12 * place, girth.as_f64().unwrap())
            })
            .collect();
        let leg = Landmark::parse(Limb::Leg, girths.keys().next().unwrap().as_str().unwrap()).is_some();
        let scene = if leg { Scene::leg() } else { Scene::arm() };
        let checked = scene.no_chart().girths(&marks.join(" ")).check();
        let ids: Vec<&str> = checked.0.findings.iter().map(|one| one.id.text()).collect();
        let asked = ids.contains(&"unusual-girth") || ids.contains(&"unusual-proportion");
        assert_eq!(Some(asked), case["asked"].as_bool(), "{case:?}: {ids:?}");
    }
}

/// Source: named above the cases of the file.
#[test]
fn arterial_values() {
    for case in &cases("arterial.yaml", 40) {
        let decision = screen(&leg_with(word(case, "values"))).arterial.unwrap();
        let found = match decision.worst() {
            Some(severity) => severity.word(),
            None if decision.passes => "pass",
            None => "no route",
        };
        assert_eq!(found, word(case, "decision"), "{case:?}");
    }
}

/// A set that another program can be held to has its two hundred cases.
#[test]
fn there_are_more_than_two_hundred() {
    let mut count = 0;
    for entry in std::fs::read_dir(crate::source::root().join("tests/conformance")).unwrap() {
        let path = entry.unwrap().path();
        let text = std::fs::read_to_string(&path).unwrap();
        match path.extension().and_then(|ending| ending.to_str()) {
            Some("yaml") => count += serde_yaml::from_str::<Vec<Value>>(&text).unwrap().len(),
            Some("json") => {
                let all: serde_json::Value = serde_json::from_str(&text).unwrap();
                count += all["cases"].as_array().unwrap().len();
            }
            _ => {}
        }
    }
    assert!(count >= 400, "{count} cases");
}
