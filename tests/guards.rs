//! Controls of hazards that no other test holds: units, statuses, files, words, identity, secrecy.

use crate::scene::{SLEEVE, Scene};
use crate::source::root;
use crate::support::{Ran, folder, run_in};

const TODAY: [&str; 2] = ["--today", "2026-03-14"];

/// Runs `check` on a record and the base sleeve in a folder of their own.
fn check(scene: &Scene, more: &[&str]) -> Ran {
    let record = scene.record();
    let mut files = vec![("record.yaml", record.as_str())];
    let mut args = vec!["check", "record.yaml"];
    if scene.files().len() > 1 {
        files.push(("chart.yaml", SLEEVE));
        args.push("chart.yaml");
    }
    args.extend(TODAY);
    args.extend(more);
    run_in(folder(&files).path(), &args, None)
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
        let arterial = format!("{{taken_on: 2026-03-10, ankle_systolic: {pressure}}}");
        assert!(!Scene::leg().set("arterial", &arterial).problems().is_empty(), "{pressure}");
    }
}

// Control: units-agree
#[test]
fn other_units_of_pressure_are_converted_not_taken_for_mmhg() {
    // Source: 1 kPa = 7.50061775845657 mmHg; 60 mmHg = 79.99 hPa (derived).
    let severity = |value: &str| {
        let arterial = format!("{{taken_on: 2026-03-10, abpi: 1, ankle_systolic: {value}}}");
        Scene::leg().set("arterial", &arterial).check().severities("ankle-pressure").first().copied()
    };
    assert_eq!(severity("79 hPa"), Some("stop"));
    assert_eq!(severity("79"), None);
    assert_eq!(severity("9.4 kPa"), None);
}

// Control: numbers-refused
#[test]
fn what_is_no_girth_is_refused_with_its_line() {
    for girth in [".nan", ".inf", "-17", "0", "2000.1", "1e1", "17,4", "seventeen"] {
        let marks = format!("[{{landmark: wrist, at: 0, girth: \"{girth}\"}}]");
        let problems = Scene::arm().set("marks", &marks).problems();
        let line = Scene::arm().record().lines().position(|line| line.starts_with("marks:")).unwrap() + 1;
        assert!(problems[0].contains(&format!("record.yaml:{line}:")), "{girth}: {problems:?}");
    }
}

// Control: statuses-apart
#[test]
fn each_outcome_has_its_exit_status() {
    // Fixed: 0 trial fitting, 1 any other, 2 no report, 3 stop.
    let scenes = [
        (Scene::arm(), 0),
        (Scene::arm().no_chart(), 0),
        (Scene::arm().present("feeling-reduced"), 1),
        (Scene::arm().unknown("feeling-altered"), 1),
        (Scene::arm().present("suspected-clot"), 3),
        (Scene::arm().set("allergies", "[polyamide]"), 3),
        (Scene::arm().set("limb", "left wing"), 2),
    ];
    for (scene, status) in scenes {
        for format in ["text", "json"] {
            let ran = check(&scene, &["--format", format]).expect_status(status);
            assert_eq!(ran.stdout.is_empty(), status == 2, "no report, no output");
        }
    }
}

// Control: stop-first
#[test]
fn a_stop_is_the_first_thing_said_and_the_first_finding() {
    let scene = Scene::leg().no_chart().present("suspected-clot, feeling-reduced, weak-hands");
    let report = check(&scene, &["--format", "json"]).expect_status(3).json();
    assert_eq!(report["findings"][0]["severity"], "stop");
    assert_eq!(report["decision"]["outcome"], "stop");
    let text = check(&scene, &[]).expect_status(3).stdout;
    let stop = text.find("STOP").unwrap();
    assert!(text.find("weak grip").unwrap() > stop);
}

// Control: emergency-said
#[test]
fn an_emergency_is_the_urgency_of_the_report() {
    let scene = Scene::arm().present("weak-hands, acute-infection, septic-signs");
    let report = check(&scene, &["--format", "json"]).expect_status(3).json();
    assert_eq!(report["decision"]["urgency"], "emergency");
    let next = report["decision"]["next"].as_str().unwrap();
    assert!(next.contains("Emergency help now"), "{next}");
}

// Control: identity-said
#[test]
fn a_report_says_whose_limb_and_when() {
    let scene = Scene::arm();
    let report = check(&scene, &["--format", "json"]).json();
    assert_eq!(report["record"]["client"], "K-1");
    assert_eq!((&report["limbs"][0]["side"], &report["limbs"][0]["limb"]), (&"left".into(), &"arm".into()));
    assert_eq!((&report["record"]["measured_on"], &report["today"]), (&TODAY[1].into(), &TODAY[1].into()));
    let text = check(&scene, &[]).stdout;
    for word in ["K-1", "LEFT ARM", "2026-03-14"] {
        assert!(text.contains(word), "{word}: {text}");
    }
}

// Control: estimate-said
#[test]
fn every_report_says_that_it_estimates_and_who_decides() {
    for scene in [Scene::arm(), Scene::leg().no_chart().present("suspected-clot"), Scene::arm().no_chart()] {
        let text = check(&scene, &[]).stdout;
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        for word in ["estimates", "certified fitter", "treating clinician", "local rules"] {
            assert!(text.contains(word), "{word}: {text}");
        }
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
    let scene = Scene::arm().present("feeling-reduced");
    assert_eq!(check(&scene, &["--format", "json"]).stdout, check(&scene, &["--format", "json"]).stdout);
}

// Control: other-limb-chart
#[test]
fn a_chart_for_another_limb_is_refused() {
    let problems = Scene::leg().only_chart(SLEEVE).problems();
    assert!(problems[0].contains("chart-1.yaml:3:"), "{problems:?}");
}

// Control: rules-named
#[test]
fn a_report_names_the_rules_it_went_by_and_a_set_with_gaps_is_refused() {
    let own = "tapeline: rules/1\nid: own\nlabel: our clinic\nsource: own\n";
    let record = Scene::arm().record();
    let named = format!("{own}extends: default\n");
    let files = folder(&[("record.yaml", &record), ("own.yaml", &named), ("gaps.yaml", own)]);
    let args = |rules| ["check", "record.yaml", "--today", "2026-03-14", "--rules", rules];
    let text = run_in(files.path(), &args("own.yaml"), None).expect_status(0).stdout;
    assert!(text.contains("our clinic"), "{text}");
    let gaps = run_in(files.path(), &args("gaps.yaml"), None).expect_status(2);
    assert!(gaps.stderr.contains("extends: default"), "{}", gaps.stderr);
    run_in(files.path(), &args("awmf-037-005"), None).expect_status(0);
}

// Control: rules-lowered-said
#[test]
fn what_local_rules_make_milder_stands_at_the_top() {
    let own = "tapeline: rules/1\nid: own\nlabel: own\nsource: own\nextends: default\nnumbers: [{id: pressure-limit, value: 90 mmHg, basis: house rule, why: agreed by our board}]\n";
    let files = folder(&[("record.yaml", &Scene::arm().record()), ("own.yaml", own)]);
    let args = ["check", "record.yaml", "--today", "2026-03-14", "--rules", "own.yaml"];
    let text = run_in(files.path(), &args, None).expect_status(0).stdout;
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let at = text.find("agreed by our board").unwrap();
    assert!(text[at..].len() > text.len() / 2, "not at the top: {text}");
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

// Control: claim-under-scheme
#[test]
fn a_class_is_never_taken_without_its_scheme() {
    assert!(!Scene::arm().set("prescribed", "{class: \"2\"}").problems().is_empty());
    // Class 1 of one scheme is not class 1 of another, even on the same limb.
    let report = Scene::leg().set("prescribed", "{scheme: bs-6612, class: \"2\"}").check();
    assert_eq!(report.severities("prescription-differs"), ["clear-first"]);
}

// Control: unjudged-fall-said
#[test]
fn a_size_without_a_judged_fall_is_fall_unknown() {
    let chart = SLEEVE.replace("    relaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}\n", "");
    assert_eq!(Scene::arm().only_chart(&chart).check().outcome(), "fall-unknown");
}

// Control: blank-is-no-pass
#[test]
fn a_blank_screening_is_one_line_and_incomplete() {
    let found = Scene::arm().without("screening").check();
    assert_eq!(found.outcome(), "incomplete");
    assert_eq!(found.severities("not-answered").len(), 1);
    let text = check(&Scene::arm().without("screening"), &[]).expect_status(1).stdout;
    assert!(text.contains("not asked"), "{text}");
}

// Control: hand-part-asked
#[test]
fn a_swollen_hand_is_said_whatever_the_sizing_says() {
    let swollen = Scene::arm().seen("hand_swelling", "yes");
    for scene in [swollen.clone(), swollen.clone().no_chart(), swollen.clone().present("suspected-clot")] {
        assert_eq!(scene.check().severities("hand-part-needed"), ["note"]);
    }
    assert_eq!(swollen.clone().check().outcome(), "refer");
    assert_eq!(
        swollen.clone().chart_with("hand_part: no", "hand_part: yes").check().outcome(),
        "trial-fitting"
    );
    assert_eq!(swollen.clone().cleared("hand-part", "therapist").check().outcome(), "trial-fitting");
    assert_eq!(swollen.cleared("hand-part", "physician").check().outcome(), "refer");
}

// Control: beyond-asked
#[test]
fn swelling_beyond_the_garment_is_asked_and_said() {
    let found = Scene::arm().seen("swelling_beyond", "yes").check();
    assert_eq!(found.severities("swelling-beyond"), ["caution"]);
    assert_eq!(found.outcome(), "trial-fitting");
    assert_eq!(Scene::arm().seen("swelling_beyond", "unknown").check().outcome(), "incomplete");
}

// Control: reading-named
#[test]
fn a_reading_of_a_garment_that_is_not_there_is_a_problem() {
    let of = |garment: &str| {
        Scene::arm().set(
            "readings",
            &format!("[{{landmark: wrist, pressure: 24, sensor_side: palm, garment: \"{garment}\"}}]"),
        )
    };
    assert!(of("sleeves, size 1").try_check().is_ok());
    assert!(!of("sleeves, size 9").problems().is_empty());
    assert!(!of("slevees, size 1").problems().is_empty());
}
