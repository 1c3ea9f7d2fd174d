//! Probable slips: named, in order, never applied.

use crate::scene::Scene;
use crate::support::{folder, run, run_in};

/// An arm whose girths lie at the mean of the published limbs.
// Source: means of log girth of 507 adults (Heinz et al. 2003, J Stat Educ 11(2)):
// exp(2.7750), exp(3.2500), exp(3.4302) = 16.04, 25.79, 30.88 cm.
fn usual_arm(wrist: &str, forearm: &str, upper_arm: &str) -> Scene {
    Scene::arm().girths(&format!("wrist@0={wrist} forearm@14={forearm} upper-arm@33={upper_arm}")).no_chart()
}

// Control: plausible-question
#[test]
fn a_lost_decimal_point_is_named_first_and_not_applied() {
    let report = usual_arm("160", "25.8", "30.9").report();
    assert_eq!(report.outcome(), Some("incomplete"));
    let message = report.message("unusual-girth");
    assert!(message.contains("nearest first: wrist 16.0 cm (decimal point, or mm for cm)"), "{message}");
    assert_eq!(report.0["record"]["marks"][0]["girth_cm"], 160.0);
}

#[test]
fn inches_of_the_whole_limb_are_one_question() {
    // Source: 1 inch = 2.54 cm by definition; the usual arm in inches.
    let report = usual_arm("6.3", "10.15", "12.16").report();
    assert_eq!(report.severities("unusual-girth"), ["care"]);
    assert!(report.severities("unusual-proportion").is_empty());
    let message = report.message("unusual-girth");
    assert!(message.contains("nearest first: every girth of the limb: typed in inches"), "{message}");
}

#[test]
fn exchanged_marks_are_named() {
    let report = usual_arm("25.8", "16.0", "30.9").report();
    let message = report.message("unusual-proportion");
    assert!(message.contains("wrist and forearm exchanged"), "{message}");
}

#[test]
fn a_list_typed_the_other_way_round_is_named() {
    let report = Scene::leg().girths("ankle@11=57 calf@31=38 knee@46=37 mid-thigh@59=22").no_chart().report();
    let message = report.message("unusual-girth");
    assert!(message.contains("the other way round"), "{message}");
}

#[test]
fn diameters_are_named() {
    // Source: girth = π × diameter, the usual arm divided by π.
    let report = usual_arm("5.1", "8.2", "9.8").report();
    let message = report.message("unusual-girth");
    assert!(message.contains("diameters typed for girths"), "{message}");
}

#[test]
fn the_nearest_slip_comes_first() {
    // A wrist of 6 cm: 16 cm (a leading 1 lost) lies 0.03 in log girth from the mean 16.04 cm, the
    // inches 15.24 cm lie 0.05 from it; both pass every band.
    let report = usual_arm("6", "25.8", "30.9").report();
    let message = report.message("unusual-girth");
    let lost = message.find("wrist 16.0 cm (a leading digit lost)").unwrap();
    let inches = message.find("wrist 15.2 cm (typed in inches)").unwrap();
    assert!(lost < inches, "{message}");
}

#[test]
fn a_confirmed_girth_is_asked_about_no_more() {
    let asked = usual_arm("31", "40", "45");
    assert_eq!(asked.report().severities("unusual-girth"), ["care"]);
    let confirmed = asked.set("confirmed", "[wrist]").report();
    assert!(confirmed.severities("unusual-girth").is_empty(), "{:?}", confirmed.ids());
}

#[test]
fn a_band_ends_where_it_says() {
    assert!(usual_arm("30", "40", "45").report().severities("unusual-girth").is_empty());
    assert_eq!(usual_arm("30.01", "40", "45").report().severities("unusual-girth"), ["care"]);
    assert!(usual_arm("11", "16", "18").report().severities("unusual-girth").is_empty());
    assert_eq!(usual_arm("10.99", "16", "18").report().severities("unusual-girth"), ["care"]);
}

#[test]
fn a_child_is_not_held_against_adult_bands() {
    let report = usual_arm("9", "12", "13").set("age_band", "child").report();
    assert!(report.severities("unusual-girth").is_empty());
    assert_eq!(report.severities("child"), ["review"]);
}

#[test]
fn the_other_limb_is_asked_about_as_well() {
    let report = Scene::arm().other("wrist@0=170 forearm@14=25 upper-arm@33=30").no_chart().report();
    assert!(report.message("unusual-girth").starts_with("Other arm"), "{:?}", report.ids());
}

// Control: sides-compared
#[test]
fn an_affected_limb_thinner_than_the_other_is_asked_about() {
    let other = "wrist@0=20 forearm@14=26 upper-arm@33=31";
    // 17 against 20 cm is thinner by exactly 15 %.
    let asked = Scene::arm().other(other).report();
    assert_eq!(asked.severities("side-thinner"), ["care"]);
    assert_eq!(asked.outcome(), Some("incomplete"));
    let short = Scene::arm().other("wrist@0=19.9 forearm@14=26 upper-arm@33=31").report();
    assert!(short.severities("side-thinner").is_empty());
    let held = Scene::arm().other(other).set("confirmed", "[wrist]").report();
    assert!(held.severities("side-thinner").is_empty());
    let both = Scene::arm().other(other).set("affected", "both").report();
    assert!(both.severities("side-thinner").is_empty());
}

// Control: previous-visit
#[test]
fn a_tenth_of_a_girth_since_the_last_visit_is_asked_about() {
    let earlier =
        Scene::arm().girths("wrist@0=20 forearm@14=26 upper-arm@33=31").set("measured", "2026-02-14");
    // 18 against 20 cm is a change of exactly 10 %, 18.1 one of 9.5 %.
    let now = |wrist| {
        Scene::arm().girths(&format!("wrist@0={wrist} forearm@14=26 upper-arm@33=31")).previous(&earlier)
    };
    let asked = now("18").report();
    assert_eq!(asked.severities("girth-changed"), ["care"]);
    assert_eq!(asked.outcome(), Some("incomplete"));
    assert!(now("18.1").report().severities("girth-changed").is_empty());
    assert!(now("22").report().severities("girth-changed").len() == 1);
    assert!(now("21.9").report().severities("girth-changed").is_empty());
    assert!(now("18").set("confirmed", "[wrist]").report().severities("girth-changed").is_empty());
}

#[test]
fn the_latest_earlier_record_counts() {
    let old = Scene::arm().girths("wrist@0=20 forearm@14=26 upper-arm@33=31").set("measured", "2025-11-14");
    let late = Scene::arm().set("measured", "2026-02-14");
    for scene in [Scene::arm().previous(&old).previous(&late), Scene::arm().previous(&late).previous(&old)] {
        assert!(scene.report().severities("girth-changed").is_empty());
    }
}

#[test]
fn a_serial_mark_that_changed_is_said_without_a_question() {
    let earlier =
        Scene::arm().girths("wrist@0=17 @7=20 forearm@14=26 upper-arm@33=31").set("measured", "2026-02-14");
    let now =
        Scene::arm().girths("wrist@0=17 @7=22.5 forearm@14=26 upper-arm@33=31").previous(&earlier).report();
    assert_eq!(now.severities("girth-changed"), ["care"]);
    assert_ne!(now.outcome(), Some("incomplete"));
}

// Control: weight-asked
#[test]
fn a_twentieth_of_the_weight_asks_for_measuring_again() {
    let earlier = Scene::arm().set("weight", "80 kg").set("measured", "2026-02-14");
    let now = |weight| Scene::arm().set("weight", weight).previous(&earlier).report();
    assert_eq!(now("76 kg").severities("weight-changed"), ["care"]);
    assert_eq!(now("84 kg").severities("weight-changed"), ["care"]);
    assert!(now("76.1 kg").severities("weight-changed").is_empty());
    assert!(now("83.9 kg").severities("weight-changed").is_empty());
}

// Control: same-limb
#[test]
fn an_earlier_record_of_another_limb_is_refused_with_its_line() {
    let of = |key, value| {
        Scene::arm().previous(&Scene::arm().set(key, value).set("measured", "2026-02-14")).problems()
    };
    for (key, value, word) in [
        ("client", "K-9", "same client"),
        ("limb", "right arm", "same limb and side"),
        ("measured", "2026-03-15", "earlier"),
    ] {
        let problems = if key == "measured" {
            Scene::arm().previous(&Scene::arm().set("measured", value)).problems()
        } else {
            of(key, value)
        };
        assert_eq!(problems.len(), 1, "{problems:?}");
        let line =
            Scene::arm().record().lines().position(|line| line.starts_with(&format!("{key}:"))).unwrap() + 1;
        assert!(problems[0].contains(&format!("previous.yaml:{line}:")), "{problems:?}");
        assert!(problems[0].contains(word), "{problems:?}");
    }
}

#[test]
fn previous_records_are_given_on_the_command_line() {
    let earlier = Scene::arm().set("weight", "60 kg").set("measured", "2026-02-14").record();
    let now = Scene::arm().set("weight", "71 kg").record();
    let folder = folder(&[("now.yaml", &now), ("then.yaml", &earlier)]);
    let ran = run_in(
        folder.path(),
        &["check", "now.yaml", "--previous", "then.yaml", "--today", "2026-03-14", "--format", "json"],
        None,
    );
    assert!(ran.expect_status(0).stdout.contains("weight-changed"));
}

// Control: blank-is-no-pass
#[test]
fn a_blank_record_gets_one_line_and_a_block_with_every_question() {
    for (scene, items) in [(Scene::arm(), 24), (Scene::leg(), 27)] {
        let blank = scene.clone().without("screening").without("allergies").without("observed");
        let report = blank.report();
        assert_eq!(report.outcome(), Some("incomplete"));
        assert_eq!(report.severities("not-answered").len(), 1);
        let template = report.0["screening"]["template"].as_str().unwrap().to_owned();
        let unanswered = report.0["screening"]["unanswered"].as_array().unwrap();
        // Source: items of the screening list by limb, 29 in all: the arm has no severe or suspected
        // arterial disease, neuropathy, bony prominence, diabetes; the leg no dialysis access, line.
        let asked = unanswered.iter().filter(|one| !one.as_str().unwrap().contains('_')).count();
        assert_eq!(asked, items + 3, "{unanswered:?}");
        for id in unanswered {
            assert!(template.contains(id.as_str().unwrap()) || id == "material-allergy", "{id}");
        }
        for list in ["  none_of: []", "  yes: []", "  no: []", "  unknown:"] {
            assert_eq!(template.lines().filter(|line| *line == list).count(), 1, "{list}");
        }
        // Pasted as it stands it answers nothing and changes nothing.
        let pasted = format!("{}{template}\n", blank.record());
        let folder = folder(&[("record.yaml", &pasted)]);
        let args = ["check", "record.yaml", "--today", "2026-03-14", "--format", "json"];
        let ran = run_in(folder.path(), &args, None).expect_status(1);
        assert_eq!(ran.json()["screening"]["unanswered"], report.0["screening"]["unanswered"]);
        // With every name moved to `no` and the rest answered, nothing is open.
        let answered: Vec<String> = pasted
            .lines()
            .map(|line| match line.split_once("  #").map(|(key, _)| key.trim_end()) {
                Some("  asked_on:") => "  asked_on: 2026-03-14".to_owned(),
                Some("allergies:") => "allergies: []".to_owned(),
                Some(key)
                    if ["hand_swelling:", "folds:", "distortion:", "pitting:"].contains(&key.trim()) =>
                {
                    format!("{key} no")
                }
                _ => line.to_owned(),
            })
            .collect();
        let answered = answered.join("\n").replace("  no: []\n", "").replace("  unknown:\n", "  no:\n");
        let folder = crate::support::folder(&[("record.yaml", &answered)]);
        let ran = run_in(folder.path(), &args, None);
        assert_eq!(ran.json()["screening"]["unanswered"].as_array().unwrap().len(), 0, "{answered}");
        assert!(ran.json()["screening"]["template"].is_null());
    }
}

#[test]
fn shipped_thresholds_go_by_name() {
    let args =
        |name| ["check", "demo/leg.yaml", "--thresholds", name, "--today", "2026-03-14", "--format", "json"];
    let ran = run(&args("s2k"));
    assert_eq!(ran.json()["screening"]["thresholds"], "S2k guideline 037/005");
    let ran = run(&args("s2l")).expect_status(2);
    assert!(ran.stderr.contains("shipped: consensus, s2k"), "{}", ran.stderr);
}
