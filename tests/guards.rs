//! Controls of hazards that no other test holds: units, statuses, files, words, identity, secrecy.

use crate::scene::{SLEEVE, Scene};
use crate::support::{folder, root, run, run_in};

fn report_of(scene: &Scene) -> serde_json::Value {
    scene.report().0
}

// Control: unit-required
#[test]
fn a_number_without_unit_or_of_another_kind_is_refused() {
    let bare = Scene::arm().without("units").problems();
    assert!(bare.iter().any(|one| one.contains("girth")), "{bare:?}");
    for girth in ["17 mmHg", "17 N/m", "17 hPa", "17 kgf", "17 %"] {
        let marks = format!("[{{landmark: wrist, at: 0, girth: {girth}}}]");
        assert!(!Scene::arm().set("marks", &marks).problems().is_empty(), "{girth}");
    }
    for pressure in ["128 cm", "128 N/m", "128 kg"] {
        let arterial = format!("{{on: 2026-03-10, ankle_systolic: {pressure}}}");
        assert!(!Scene::leg().set("arterial", &arterial).problems().is_empty(), "{pressure}");
    }
}

// Control: units-agree
#[test]
fn other_units_of_pressure_are_converted_not_taken_for_mmhg() {
    // Source: 1 kPa = 7.50061775845657 mmHg to six figures; 60 mmHg = 79.99 hPa.
    let severity = |value: &str| {
        let arterial = format!("{{on: 2026-03-10, abpi: 1, ankle_systolic: {value}}}");
        let report = Scene::leg().set("arterial", &arterial).report();
        report.severities("ankle-systolic").first().map(|one| (*one).to_owned())
    };
    assert_eq!(severity("79 hPa").as_deref(), Some("stop"));
    assert_eq!(severity("79").as_deref(), None);
    assert_eq!(severity("9.4 kPa"), None);
}

// Control: numbers-refused
#[test]
fn what_is_no_girth_is_refused_with_its_line() {
    for girth in [".nan", ".inf", "-17", "0", "200.1", "1e1", "17,4", "seventeen"] {
        let marks = format!("[{{landmark: wrist, at: 0, girth: \"{girth}\"}}]");
        let problems = Scene::arm().set("marks", &marks).problems();
        let line = Scene::arm().record().lines().position(|line| line.starts_with("marks:")).unwrap() + 1;
        assert!(problems[0].contains(&format!("record.yaml:{line}:")), "{girth}: {problems:?}");
    }
}

// Control: statuses-apart
#[test]
fn each_outcome_has_its_exit_status() {
    // Fixed: 0 try-on, 1 any other, 2 no report, 3 stop.
    let scenes = [
        (Scene::arm(), 0),
        (Scene::arm().answer("reduced-feeling", "yes"), 1),
        (Scene::arm().answer("tingling", "unknown"), 1),
        (Scene::arm().answer("suspected-dvt", "yes"), 3),
        (Scene::arm().set("allergies", "[polyamide]"), 3),
        (Scene::arm().set("limb", "left wing"), 2),
    ];
    for (scene, status) in scenes {
        let folder = folder(&[("record.yaml", &scene.record()), ("chart.yaml", SLEEVE)]);
        for format in ["text", "json"] {
            let args = [
                "check",
                "record.yaml",
                "--chart",
                "chart.yaml",
                "--today",
                "2026-03-14",
                "--format",
                format,
            ];
            let ran = run_in(folder.path(), &args, None).expect_status(status);
            assert_eq!(ran.stdout.is_empty(), status == 2, "no report, no output");
        }
    }
}

// Control: stop-first
#[test]
fn a_stop_is_the_first_thing_said_and_the_first_finding() {
    let scene = Scene::leg().answer("suspected-dvt, reduced-feeling, weak-hands", "yes");
    let report = report_of(&scene);
    assert_eq!(report["findings"][0]["severity"], "stop");
    assert_eq!(report["outcome"], "stop");
    let folder = folder(&[("record.yaml", &scene.record())]);
    let text =
        run_in(folder.path(), &["check", "record.yaml", "--today", "2026-03-14"], None).expect_status(3);
    let stop = text.stdout.find("STOP").unwrap();
    assert!(text.stdout.find("weak grip").unwrap() > stop);
}

// Control: identity-said
#[test]
fn a_report_says_whose_limb_and_when() {
    let scene = Scene::arm();
    let report = report_of(&scene);
    let record = &report["record"];
    assert_eq!((record["client"].as_str(), record["side"].as_str()), (Some("K-1"), Some("left")));
    assert_eq!((record["limb"].as_str(), record["measured"].as_str()), (Some("arm"), Some("2026-03-14")));
    assert_eq!(report["today"], "2026-03-14");
    let folder = folder(&[("record.yaml", &scene.record())]);
    let text = run_in(folder.path(), &["check", "record.yaml", "--today", "2026-03-14"], None).stdout;
    for word in ["K-1", "LEFT ARM", "2026-03-14"] {
        assert!(text.contains(word), "{word}: {text}");
    }
}

// Control: estimate-said
#[test]
fn every_report_says_that_it_estimates_and_who_decides() {
    for scene in [Scene::arm(), Scene::leg().answer("suspected-dvt", "yes"), Scene::arm().no_chart()] {
        let report = report_of(&scene);
        let limits: Vec<&str> =
            report["limits"].as_array().unwrap().iter().map(|one| one.as_str().unwrap()).collect();
        let limits = limits.join(" ");
        for word in ["estimates", "certified fitter", "treating clinician", "local rules"] {
            assert!(limits.contains(word), "{word}: {limits}");
        }
        let folder = folder(&[("record.yaml", &scene.record())]);
        let text = run_in(folder.path(), &["check", "record.yaml", "--today", "2026-03-14"], None).stdout;
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(text.contains("estimates") && text.contains("certified fitter"), "{text}");
    }
}

// Control: file-kept
#[test]
fn an_existing_file_is_kept_and_a_failed_run_writes_none() {
    let folder = folder(&[("record.yaml", &Scene::arm().record()), ("old.json", "old")]);
    let args =
        |out: &'static str| ["check", "record.yaml", "--today", "2026-03-14", "--format", "json", "-o", out];
    run_in(folder.path(), &args("old.json"), None).expect_status(2);
    assert_eq!(std::fs::read_to_string(folder.path().join("old.json")).unwrap(), "old");
    std::fs::write(folder.path().join("record.yaml"), "tapeline: record/1\n").unwrap();
    run_in(folder.path(), &args("new.json"), None).expect_status(2);
    let left: Vec<_> = std::fs::read_dir(folder.path()).unwrap().collect();
    assert_eq!(left.len(), 2, "{left:?}");
}

// Control: same-bytes
#[test]
fn the_same_input_gives_the_same_bytes() {
    let folder = folder(&[
        ("record.yaml", &Scene::arm().answer("reduced-feeling", "yes").record()),
        ("chart.yaml", SLEEVE),
    ]);
    let args = ["check", "record.yaml", "--chart", "chart.yaml", "--today", "2026-03-14", "--format", "json"];
    assert_eq!(run_in(folder.path(), &args, None).stdout, run_in(folder.path(), &args, None).stdout);
}

// Control: other-limb-chart
#[test]
fn a_chart_for_another_limb_is_refused() {
    let folder = folder(&[("record.yaml", &Scene::leg().record()), ("chart.yaml", SLEEVE)]);
    let ran =
        run_in(folder.path(), &["check", "record.yaml", "--chart", "chart.yaml"], None).expect_status(2);
    assert!(ran.stderr.contains("chart.yaml:3:"), "{}", ran.stderr);
}

// Control: rules-named
#[test]
fn a_report_names_the_rules_it_went_by_and_a_set_with_gaps_is_refused() {
    let own = Scene::arm().thresholds("numbers: []").report();
    assert_eq!(own.0["screening"]["thresholds"], "own");
    let folder = folder(&[
        ("record.yaml", &Scene::arm().record()),
        ("own.yaml", "tapeline: thresholds/1\nid: own\nlabel: own\nsource: own\n"),
    ]);
    let args = ["check", "record.yaml", "--thresholds", "own.yaml"];
    let ran = run_in(folder.path(), &args, None).expect_status(2);
    assert!(ran.stderr.contains("`tape-sd`"), "{}", ran.stderr);
}

// Control: local-only
#[test]
fn nothing_reaches_for_a_network_or_asks_for_a_name() {
    let mut folders = vec![root().join("src")];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let source = std::fs::read_to_string(&path).unwrap_or_default();
                for word in ["std::net", "TcpStream", "UdpSocket", "reqwest", "ureq::", "hyper::"] {
                    assert!(!source.contains(word), "{}: {word}", path.display());
                }
            }
        }
    }
    // A record has a reference, and no key for a name or a day of birth.
    for key in ["name", "surname", "born", "address"] {
        assert!(!Scene::arm().set(key, "somebody").problems().is_empty(), "{key}");
    }
}

// Control: folded-edge
#[test]
fn a_folded_edge_is_printed_as_twice_the_pressure() {
    // Source: one fold is two layers on the same girth (derived).
    let folder = folder(&[(
        "knit.yaml",
        "tapeline: fabric/1\nlabel: knit\nbasis: invented\ncurve:\n  - {stretch: 0 %, tension: 0 N/m}\n  - {stretch: 100 %, tension: 250 N/m}\n",
    )]);
    let chart = format!("{SLEEVE}fabric: {}\n", folder.path().join("knit.yaml").display());
    let report = report_of(&Scene::arm().only_chart(&chart));
    let edge = &report["pressure"][0]["top_edge"];
    let (plain, twice) = (edge["pressure_mmhg"].as_f64().unwrap(), edge["folded_mmhg"].as_f64().unwrap());
    assert!((twice - 2.0 * plain).abs() < 1e-9, "{edge}");
}

// Control: claim-under-scheme
#[test]
fn a_class_is_never_taken_without_its_scheme() {
    assert!(!Scene::arm().set("prescribed", "{class: \"2\"}").problems().is_empty());
    // Class 1 of one scheme is not class 1 of another, even on the same limb.
    let report = Scene::leg().set("prescribed", "{scheme: bs-6612, class: \"2\"}").report();
    assert_eq!(report.severities("prescription-differs"), ["review"]);
}

// Control: unproven-said
#[test]
fn a_size_without_a_judged_fall_is_unproven() {
    let chart = SLEEVE.replace("    relaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}\n", "");
    let report = Scene::arm().only_chart(&chart).report();
    assert_eq!(report.outcome(), Some("unproven"));
}

// Control: blank-is-no-pass
#[test]
fn a_blank_record_prints_the_block_in_the_terminal() {
    let blank = Scene::arm().without("screening").record();
    let folder = folder(&[("record.yaml", &blank)]);
    let ran =
        run_in(folder.path(), &["check", "record.yaml", "--today", "2026-03-14"], None).expect_status(1);
    assert!(ran.stdout.contains("\nscreening:\n  asked_on:"), "{}", ran.stdout);
    assert_eq!(ran.stdout.matches("The screening is not asked").count(), 2, "outcome line and finding");
    let answered = run(&["check", "demo/first-visit.yaml", "--today", "2026-03-14"]);
    assert!(!answered.stdout.contains("asked_on:"));
}
