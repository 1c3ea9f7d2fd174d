//! Screening answers and arterial values against the published and recalled rules: each weighs what
//! it should, on the limbs where it should, and is cleared by whom it should.

use crate::scene::{GROUPS, Scene};

/// Every screening item: id, arm, leg, severity, basis, whether girths are put off.
// Source: the consensus on contraindications (Rabe 2020, Phlebology 35:447), the Lymphoedema
// Framework (2006), the BLS cellulitis consensus, Br J Nurs 2023;32 Sup20 and Wu 2012 for the items
// marked published; the rest as their basis word says.
const ITEMS: [(&str, bool, bool, &str, &str); 28] = [
    ("severe-arterial-disease", false, true, "stop", "published"),
    ("suspected-arterial-disease", false, true, "review", "secondary"),
    ("bypass-under-garment", true, true, "stop", "published"),
    ("severe-heart-failure", true, true, "stop", "published"),
    ("moderate-heart-failure", true, true, "review", "published"),
    ("new-two-sided-swelling", true, true, "review", "memory"),
    ("severe-diabetic-neuropathy", false, true, "stop", "published"),
    ("reduced-feeling", true, true, "review", "secondary"),
    ("tingling", true, true, "care", "house rule"),
    ("acute-infection", true, true, "stop", "published"),
    ("septic-signs", true, true, "stop", "published"),
    ("septic-phlebitis", true, true, "stop", "secondary"),
    ("phlegmasia", true, true, "stop", "secondary"),
    ("suspected-dvt", true, true, "stop", "secondary"),
    ("suspected-skin-cancer", true, true, "stop", "secondary"),
    ("fragile-skin", true, true, "review", "secondary"),
    ("open-wound", true, true, "review", "secondary"),
    ("deep-folds", true, true, "review", "memory"),
    ("still-reducing", true, true, "care", "memory"),
    ("weak-hands", true, true, "care", "secondary"),
    ("cannot-remove-alone", true, true, "review", "secondary"),
    ("cannot-report", true, true, "review", "published"),
    ("bony-prominence", false, true, "care", "secondary"),
    ("dialysis-access", true, false, "review", "memory"),
    ("suspected-recurrence", true, true, "review", "memory"),
    ("line-or-device", true, false, "review", "memory"),
    ("diabetes", false, true, "care", "published"),
    ("pregnancy-child-frail", true, true, "care", "memory"),
];

fn outcome_of(severity: &str) -> &'static str {
    match severity {
        "stop" => "stop",
        "review" => "refer",
        _ => "try-on",
    }
}

// Control: items-by-limb
#[test]
fn each_item_weighs_its_severity_on_its_limbs_and_nothing_elsewhere() {
    for (item, on_arm, on_leg, severity, basis) in ITEMS {
        for (scene, applies) in [(Scene::arm(), on_arm), (Scene::leg(), on_leg)] {
            let report = scene.answer(item, "yes").report();
            if applies {
                assert_eq!(report.severities(item), [severity], "{item}");
                assert_eq!(report.outcome(), Some(outcome_of(severity)), "{item}: {:?}", report.ids());
                let found = report.findings().find(|one| one["id"] == item).unwrap();
                assert_eq!(found["basis"], basis, "{item}");
                assert!(
                    !found["source"].as_str().unwrap().is_empty()
                        && !found["next"].as_str().unwrap().is_empty()
                );
            } else {
                assert!(report.severities(item).is_empty(), "{item}");
                assert_eq!(report.outcome(), Some("try-on"), "{item}: {:?}", report.ids());
            }
        }
    }
}

// Control: unknown-is-no-pass
#[test]
fn each_item_unknown_or_missing_is_incomplete_on_its_limbs() {
    for (item, on_arm, on_leg, _, _) in ITEMS {
        for (scene, applies) in [(Scene::arm(), on_arm), (Scene::leg(), on_leg)] {
            let wanted = if applies { "incomplete" } else { "try-on" };
            // On a leg with an index the circulation items raise nothing else.
            let report = scene.answer(item, "unknown").report();
            assert_eq!(report.outcome(), Some(wanted), "{item}: {:?}", report.ids());
            assert_eq!(report.severities("not-answered").len(), usize::from(applies), "{item}");
        }
    }
    for group in GROUPS.split(", ") {
        let rest: Vec<&str> = GROUPS.split(", ").filter(|one| *one != group).collect();
        let screening = format!("{{asked_on: 2026-03-14, none_of: [{}]}}", rest.join(", "));
        let report = Scene::arm().set("screening", &screening).report();
        assert_eq!(report.outcome(), Some("incomplete"), "{group}");
    }
}

#[test]
fn each_item_answered_no_passes() {
    for (item, ..) in ITEMS {
        for scene in [Scene::arm(), Scene::leg()] {
            assert_eq!(scene.answer(item, "no").report().outcome(), Some("try-on"), "{item}");
        }
    }
}

// Control: observed-compulsory
#[test]
fn questions_about_the_limb_have_to_be_answered() {
    let keys = ["hand_swelling", "pitting", "folds", "distortion"];
    for key in keys {
        for answer in ["unknown", "missing"] {
            let lines: Vec<String> = keys
                .iter()
                .filter(|one| **one != key || answer != "missing")
                .map(|one| format!("{one}: {}", if *one == key { answer } else { "no" }))
                .collect();
            let observed = format!("{{{}}}", lines.join(", "));
            let arm = Scene::arm().set("observed", &observed).report();
            assert_eq!(arm.outcome(), Some("incomplete"), "{key} {answer}");
            // The hand is asked about on arms only; on a leg its answer is accepted and ignored.
            let leg = Scene::leg().set("observed", &observed).report();
            let wanted = if key == "hand_swelling" { "try-on" } else { "incomplete" };
            assert_eq!(leg.outcome(), Some(wanted), "{key} {answer}");
        }
    }
}

#[test]
fn allergies_answer_the_material_question() {
    assert_eq!(Scene::arm().without("allergies").report().outcome(), Some("incomplete"));
    let named = Scene::arm().answer("material-allergy", "yes").problems();
    assert!(named[0].contains("`allergies`"), "{named:?}");
}

// Control: emergency-said
#[test]
fn an_emergency_is_said_as_one() {
    // Source: BLS cellulitis consensus (septic signs); phlegmasia secondary.
    for (item, ..) in ITEMS {
        let report = Scene::leg().answer(item, "yes").report();
        let urgent = report.findings().any(|one| one["message"].as_str().unwrap().starts_with("EMERGENCY"));
        assert_eq!(urgent, ["septic-signs", "phlegmasia"].contains(&item), "{item}");
    }
}

// Control: infection-postpones
#[test]
fn girths_taken_during_an_infection_are_not_used() {
    // Source: Lymphoedema Framework 2006.
    let report = Scene::arm().answer("acute-infection", "yes").report();
    assert_eq!(report.outcome(), Some("stop"));
    assert_eq!(report.0["charts"][0]["verdict"], "not-judged");
    assert!(report.0["charts"][0]["size"].is_null());
}

// Control: stop-stands
#[test]
fn a_stop_cannot_be_cleared() {
    for (item, _, on_leg, severity, _) in ITEMS {
        let scene = if on_leg { Scene::leg() } else { Scene::arm() };
        let scene = scene.answer(item, "yes").cleared(item, "renal and vascular consultant");
        match severity {
            "stop" => {
                let problems = scene.problems();
                assert!(problems[0].contains("a stop cannot be cleared"), "{item}: {problems:?}");
            }
            "review" => {
                let report = scene.report();
                assert!(report.is_cleared(item), "{item}");
                assert_eq!(report.outcome(), Some("try-on"), "{item}: {:?}", report.ids());
            }
            _ => assert_eq!(scene.report().outcome(), Some("try-on"), "{item}"),
        }
    }
    let problems =
        Scene::leg().set("arterial", "{on: 2026-03-10, abpi: 0.5}").cleared("abpi", "vascular").problems();
    assert!(problems[0].contains("a stop cannot be cleared"), "{problems:?}");
    let problems =
        Scene::arm().set("allergies", "[latex]").cleared("material-allergy", "consultant").problems();
    assert!(problems[0].contains("cannot be cleared"), "{problems:?}");
}

// Control: named-role-only
#[test]
fn dialysis_access_is_cleared_by_the_renal_or_vascular_team_only() {
    let scene =
        |role| Scene::arm().answer("dialysis-access", "yes").cleared("dialysis-access", role).report();
    for role in ["renal nurse", "Vascular team", "consultant in RENAL medicine"] {
        assert_eq!(scene(role).outcome(), Some("try-on"), "{role}");
        assert!(scene(role).severities("cleared-in-vain").is_empty());
    }
    for role in ["consultant", "certified fitter", "heart team"] {
        let report = scene(role);
        assert_eq!(report.outcome(), Some("refer"), "{role}");
        assert_eq!(report.severities("cleared-in-vain"), ["care"], "{role}");
        assert!(!report.is_cleared("dialysis-access"));
    }
}

#[test]
fn a_clearance_shows_role_reason_and_day() {
    let report =
        Scene::arm().answer("reduced-feeling", "yes").cleared("reduced-feeling", "consultant").report();
    let found = report.findings().find(|one| one["id"] == "reduced-feeling").unwrap();
    assert_eq!(
        found["cleared_by"],
        serde_json::json!({"role": "consultant", "reason": "assessed", "on": "2026-03-13"})
    );
}

#[test]
fn one_question_has_one_answer() {
    let screening = format!("{{asked_on: 2026-03-14, none_of: [{GROUPS}], yes: [tingling], no: [tingling]}}");
    let problems = Scene::arm().set("screening", &screening).problems();
    assert!(problems[0].contains("stands under `yes` as well"), "{problems:?}");
}

fn leg_with(arterial: &str) -> crate::scene::Report {
    Scene::leg().set("arterial", &format!("{{on: 2026-03-10, {arterial}}}")).report()
}

// Control: arterial-edges
#[test]
fn arterial_values_are_judged_at_their_edges() {
    // Source: Rabe 2020, Phlebology 35:447 (below 0.6; ankle below 60; toe below 30; TcPO2 below 20
    // mmHg); Team 2019, WP&R J 27:74 (0.6 to 0.8); above 1.3 and ankle below 70 mmHg secondary.
    let vectors: [(&str, &str, Option<&str>); 17] = [
        ("abpi: 0.59", "abpi", Some("stop")),
        ("abpi: 0.599", "abpi", Some("stop")),
        ("abpi: 0.60", "abpi", Some("review")),
        ("abpi: 0.79", "abpi", Some("review")),
        ("abpi: 0.80", "abpi", None),
        ("abpi: 1.30", "abpi", None),
        ("abpi: 1.31", "abpi", Some("review")),
        ("abpi: 1, ankle_systolic: 59.9", "ankle-systolic", Some("stop")),
        ("abpi: 1, ankle_systolic: 60.0", "ankle-systolic", Some("review")),
        ("abpi: 1, ankle_systolic: 69.9", "ankle-systolic", Some("review")),
        ("abpi: 1, ankle_systolic: 70.0", "ankle-systolic", None),
        ("abpi: 1, toe: 29.9", "toe", Some("stop")),
        ("abpi: 1, toe: 30.0", "toe", None),
        ("abpi: 1, tcpo2: 19.9", "tcpo2", Some("stop")),
        ("abpi: 1, tcpo2: 20", "tcpo2", None),
        // Source: 59.9 and 60 mmHg in kPa, 1 kPa = 7.50061575845657 mmHg.
        ("abpi: 1, ankle_systolic: 7.98601101 kPa", "ankle-systolic", Some("stop")),
        ("abpi: 1, ankle_systolic: 7.9993432449 kPa", "ankle-systolic", Some("review")),
    ];
    for (values, id, severity) in vectors {
        let report = leg_with(values);
        let wanted: Vec<&str> = severity.into_iter().collect();
        assert_eq!(report.severities(id), wanted, "{values}");
        let outcome = match severity {
            Some("stop") => "stop",
            Some(_) => "refer",
            None => "try-on",
        };
        assert_eq!(report.outcome(), Some(outcome), "{values}: {:?}", report.ids());
    }
}

// Control: ratio-and-absolute
#[test]
fn ratio_and_ankle_pressure_are_both_judged_and_the_worse_wins() {
    // Source: 0.65 × brachial 90 = 58.5 mmHg, below 60 (Rabe 2020): stop, though the ratio alone is review.
    let report = leg_with("ankle_systolic: 58.5, brachial_systolic: 90");
    assert_eq!(report.severities("abpi"), ["review"]);
    assert_eq!(report.severities("ankle-systolic"), ["stop"]);
    assert_eq!(report.outcome(), Some("stop"));
    // A stated index goes before the quotient.
    let report = leg_with("abpi: 1.0, ankle_systolic: 75, brachial_systolic: 120");
    assert!(report.severities("abpi").is_empty());
    // 72 / 120 = 0.6 exactly: review, not stop.
    assert_eq!(leg_with("ankle_systolic: 72, brachial_systolic: 120").severities("abpi"), ["review"]);
}

#[test]
fn the_second_profile_differs_where_it_says() {
    // Source: S2k guideline 037/005 (secondary): below 0.5 stop; NYHA III stop.
    for (value, consensus, s2k) in [
        ("0.49", "stop", "stop"),
        ("0.50", "stop", "review"),
        ("0.59", "stop", "review"),
        ("0.60", "review", "review"),
    ] {
        let scene = Scene::leg().set("arterial", &format!("{{on: 2026-03-10, abpi: {value}}}"));
        assert_eq!(scene.report().severities("abpi"), [consensus], "{value}");
        assert_eq!(scene.shipped("s2k").report().severities("abpi"), [s2k], "{value}");
    }
    let scene = Scene::arm().answer("moderate-heart-failure", "yes");
    assert_eq!(scene.report().severities("moderate-heart-failure"), ["review"]);
    assert_eq!(scene.shipped("s2k").report().severities("moderate-heart-failure"), ["stop"]);
    for (item, _, on_leg, severity, _) in ITEMS {
        if item != "moderate-heart-failure" {
            let scene = if on_leg { Scene::leg() } else { Scene::arm() };
            assert_eq!(
                scene.answer(item, "yes").shipped("s2k").report().severities(item),
                [severity],
                "{item}"
            );
        }
    }
}

#[test]
fn an_index_outside_0_to_2_5_is_refused_as_a_slip() {
    for (value, fine) in [("2.5", true), ("2.51", false), ("104", false), ("-0.1", false), ("0", true)] {
        let scene = Scene::leg().set("arterial", &format!("{{on: 2026-03-10, abpi: {value}}}"));
        if fine {
            scene.report();
        } else {
            assert!(!scene.problems().is_empty(), "{value}");
        }
    }
}

// Control: no-index-rule
#[test]
fn a_leg_without_an_index_is_judged_by_the_pressure_in_question() {
    // Source: Derbyshire JAPC: above 20 mmHg an index or a vascular assessment; class 1 of RAL-GZ
    // 387/1 reaches 21, class A of ENV 12718 reaches 14 mmHg.
    let scene = |scheme: &str, class: &str| {
        let chart = crate::scene::STOCKING
            .replace("ral-gz-387-1", scheme)
            .replace("class: \"2\"", &format!("class: \"{class}\""));
        Scene::leg().without("arterial").only_chart(&chart)
    };
    assert_eq!(scene("env-12718", "A").report().severities("no-abpi"), ["care"]);
    assert_eq!(scene("ral-gz-387-1", "1").report().severities("no-abpi"), ["review"]);
    // An open end counts as above 20.
    assert_eq!(scene("ral-gz-387-1", "4").report().severities("no-abpi"), ["review"]);
    // The prescribed end counts as well.
    let prescribed = |range: &str| scene("env-12718", "A").set("prescribed", &format!("{{range: {range}}}"));
    assert_eq!(prescribed("15-20 mmHg").report().severities("no-abpi"), ["care"]);
    assert_eq!(prescribed("15-20.1 mmHg").report().severities("no-abpi"), ["review"]);
    // A circulation item open or yes makes a review of a care.
    for answer in ["unknown", "yes"] {
        let doubt = scene("env-12718", "A").answer("suspected-arterial-disease", answer).report();
        assert_eq!(doubt.severities("no-abpi"), ["review"], "{answer}");
    }
    let heart = scene("env-12718", "A").answer("moderate-heart-failure", "yes").report();
    assert_eq!(heart.severities("no-abpi"), ["care"]);
    // A named clinician clears the review.
    let cleared = scene("ral-gz-387-1", "2").cleared("no-abpi", "vascular nurse").report();
    assert!(cleared.is_cleared("no-abpi"));
    assert_eq!(cleared.outcome(), Some("try-on"), "{:?}", cleared.ids());
    // Arms have no index.
    assert!(Scene::arm().report().severities("no-abpi").is_empty());
}

// Control: assessment-capped
#[test]
fn a_clinical_assessment_covers_the_pressure_up_to_its_cap() {
    // Class 2 of RAL-GZ 387/1 reaches 32 mmHg (published).
    let scene =
        |arterial: &str| Scene::leg().set("arterial", &format!("{{on: 2026-03-10, {arterial}}}")).report();
    assert!(
        scene("clinical: adequate, clinical_by: vascular nurse, cap: 32").severities("no-abpi").is_empty()
    );
    assert_eq!(
        scene("clinical: adequate, clinical_by: vascular nurse, cap: 31.9").severities("no-abpi"),
        ["review"]
    );
    assert_eq!(scene("clinical: adequate, clinical_by: vascular nurse").severities("no-abpi"), ["review"]);
    let inadequate = scene("clinical: inadequate, clinical_by: vascular nurse, cap: 32");
    assert_eq!(inadequate.severities("clinical"), ["review"]);
    assert_eq!(inadequate.outcome(), Some("refer"));
    let arterial = "{on: 2026-03-10, abpi: 1, clinical: inadequate}";
    let cleared = Scene::leg().set("arterial", arterial).cleared("clinical", "vascular team").report();
    assert!(cleared.is_cleared("clinical"));
}

// Control: stale-asked
#[test]
fn ages_count_in_calendar_months_to_the_day() {
    // Source: six months for girths published (Derbyshire JAPC); three months and the age of answers
    // and arterial values house rules. 30 November + 3 months = 28 February.
    let girths = |measured, today| {
        let screening = format!("{{asked_on: {today}, none_of: [{GROUPS}]}}");
        Scene::arm().set("measured", measured).set("screening", &screening).today(today).report()
    };
    for (measured, today, severity) in [
        ("2025-12-14", "2026-03-14", None),
        ("2025-12-13", "2026-03-14", Some("care")),
        ("2025-11-30", "2026-02-28", None),
        ("2025-11-30", "2026-03-01", Some("care")),
        ("2025-09-14", "2026-03-14", Some("care")),
        ("2025-09-13", "2026-03-14", Some("review")),
        ("2025-08-31", "2026-02-28", Some("care")),
        ("2025-08-31", "2026-03-01", Some("review")),
        ("2026-03-14", "2026-03-14", None),
    ] {
        let wanted: Vec<&str> = severity.into_iter().collect();
        let report = girths(measured, today);
        assert_eq!(report.severities("girths-old"), wanted, "{measured} on {today}");
        if severity == Some("review") {
            assert_eq!(report.outcome(), Some("refer"));
        }
    }
    assert_eq!(girths("2026-03-15", "2026-03-14").severities("dated-ahead"), ["review"]);
    assert!(girths("2026-03-14", "2026-03-14").severities("dated-ahead").is_empty());
    let asked = |on: &str| {
        Scene::arm()
            .set("screening", &format!("{{{on}none_of: [{GROUPS}]}}"))
            .report()
            .severities("screening-old")
            .len()
    };
    assert_eq!((asked("asked_on: 2025-12-14, "), asked("asked_on: 2025-12-13, "), asked("")), (0, 1, 1));
    let arterial = |on: &str| {
        Scene::leg().set("arterial", &format!("{{{on}abpi: 1}}")).report().severities("arterial-old").len()
    };
    assert_eq!((arterial("on: 2025-09-14, "), arterial("on: 2025-09-13, "), arterial("")), (0, 1, 1));
}

#[test]
fn every_number_of_the_consensus_is_the_one_recorded() {
    // Source: beside each number in the thresholds file; restated here from the sources.
    let wanted: [(&str, f64, &str); 35] = [
        ("tape-sd", 0.35, "derived"),
        ("relaxed-sd", 0.3, "house rule"),
        ("tension-sd", 0.05, "house rule"),
        ("reading-sd", 2.5, "house rule"),
        ("reading-gap", 0.5, "house rule"),
        ("edge-margin", 0.5, "house rule"),
        ("pick-miss", 0.5, "house rule"),
        ("pair-distance", 8.0, "house rule"),
        ("rise-certain", 0.95, "house rule"),
        ("rise-likely", 0.5, "house rule"),
        ("rise-possible", 0.2, "house rule"),
        ("rise-removes", 3.0, "house rule"),
        ("stretch-exponent-low", 0.7, "house rule"),
        ("stretch-exponent-high", 1.5, "house rule"),
        ("pressure-limit", 60.0, "house rule"),
        ("class-chance", 0.05, "house rule"),
        ("ratio-chance", 0.95, "house rule"),
        ("inside-chance", 0.5, "house rule"),
        ("band-tolerance", 0.2, "house rule"),
        ("slope-care", 1.5, "house rule"),
        ("slope-strong", 2.5, "house rule"),
        ("girth-age-care", 3.0, "house rule"),
        ("girth-age-review", 6.0, "published"),
        ("screening-age-care", 3.0, "house rule"),
        ("arterial-age-care", 6.0, "house rule"),
        ("no-abpi-target", 20.0, "published"),
        ("previous-change", 0.1, "house rule"),
        ("thinner-side", 0.15, "house rule"),
        ("weight-change", 0.05, "house rule"),
        ("sizes-apart", 2.0, "house rule"),
        ("layers-low", 0.83, "published"),
        ("layers-high", 0.85, "published"),
        ("sensor-bias", -2.1, "published"),
        ("sensor-low", -10.1, "published"),
        ("sensor-high", 5.8, "published"),
    ];
    let rules = tapeline::rules::read_shipped_rules("consensus").unwrap();
    assert_eq!(rules.numbers.len(), wanted.len());
    for (id, value, basis) in wanted {
        let number = rules.numbers.iter().find(|one| one.id.id() == id).unwrap();
        assert!((number.value - value).abs() < 1e-9, "{id}: {}", number.value);
        assert_eq!(number.basis.word(), basis, "{id}");
    }
}

#[test]
fn a_thresholds_file_raises_house_rules_on_shape_and_no_others() {
    let falling = Scene::arm().girths("wrist@0=17 forearm@14=26 upper-arm@33=25.4").no_chart();
    assert_eq!(falling.report().severities("girth-falls"), ["care"]);
    let raise = |finding: &str| {
        format!("raised: [{{finding: {finding}, severity: review, basis: house rule, why: our clinic}}]")
    };
    let raised = falling.clone().thresholds(&raise("girth-falls")).report();
    assert_eq!(raised.severities("girth-falls"), ["review"]);
    assert_eq!(raised.outcome(), Some("refer"));
    let folder = crate::support::folder(&[
        ("record.yaml", &falling.record()),
        (
            "own.yaml",
            &format!(
                "tapeline: thresholds/1\nid: own\nlabel: own\nsource: own\nextends: consensus\n{}\n",
                raise("child")
            ),
        ),
    ]);
    let args = ["check", "record.yaml", "--thresholds", "own.yaml"];
    let ran = crate::support::run_in(folder.path(), &args, None).expect_status(2);
    assert!(ran.stderr.contains("own.yaml:6:"), "{}", ran.stderr);
}
