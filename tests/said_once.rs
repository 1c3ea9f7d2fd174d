//! Small matters that a changed sign once passed: which urgency, which end of a range, which side, which word.
//!
//! Source: each rule as the findings state it; each case is the smallest that tells the two readings apart.

use crate::scene::Scene;

#[test]
fn a_stop_by_a_value_is_seen_soon_and_a_clearing_waits() {
    // An arterial stop is due soon; one to clear first is routine.
    let of = |abpi: &str| {
        let leg = Scene::leg().set("arterial", &format!("{{taken_on: 2026-03-10, abpi: {abpi}}}"));
        leg.check().of("abpi").map(|one| one.urgency.word()).collect::<Vec<_>>()
    };
    assert_eq!(of("0.59"), ["soon"]);
    assert_eq!(of("0.61"), ["routine"]);
}

#[test]
fn none_beside_an_allergy_is_asked_about() {
    let both = Scene::arm().set("allergies", "[latex, none]").try_check();
    let said = match both {
        Ok(checked) => !checked.severities("allergy-unknown").is_empty(),
        Err(_) => true,
    };
    assert!(said);
    assert!(Scene::arm().set("allergies", "[latex]").check().severities("allergy-unknown").is_empty());
}

#[test]
fn the_end_that_is_missed_is_the_one_that_is_told() {
    let lengths = |range: &str| {
        let lengths =
            format!("lengths: [{{variant: short, wrist to upper-arm: {range}}}]\n    relaxed: {{wrist: 12.5");
        Scene::arm().chart_with("relaxed: {wrist: 12.5", &lengths).check()
    };
    // 33 cm from wrist to upper arm.
    let said =
        |range: &str| lengths(range).of("no-length").map(|one| one.message.clone()).collect::<Vec<_>>();
    assert!(said("28-32.9")[0].contains("the longest is 32.9"), "{:?}", said("28-32.9"));
    assert!(said("33.1-40")[0].contains("the shortest is 33.1"), "{:?}", said("33.1-40"));
    assert!(said("28-33").is_empty());
}

#[test]
fn one_limb_is_and_two_sides_are() {
    let one = Scene::arm().set("affected", "right").check();
    let said: Vec<_> = one.of("affected").map(|one| one.message.clone()).collect();
    assert!(said[0].contains("the right arm is affected"), "{said:?}");
    let two = Scene::arm().set("affected", "none").check();
    let said: Vec<_> = two.of("affected").map(|one| one.message.clone()).collect();
    assert!(said[0].contains("neither side is affected"), "{said:?}");
    let held = Scene::arm().set("affected", "right").set("confirmed", "[affected]").check();
    assert!(held.severities("affected").is_empty());
}

#[test]
fn a_size_taken_out_is_the_reason_that_is_told() {
    // The forearm 24 cm wide on 26 cm hardly stretches; the upper arm does: a certain rise in the only size.
    let scene = Scene::arm().chart_with(
        "relaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}",
        "relaxed: {wrist: 15.9, forearm: 20.8, upper-arm: 22}",
    );
    let checked = scene.check();
    assert_eq!(checked.outcome(), "made-to-measure");
    assert_eq!(checked.severities("size-taken-out").len(), 1);
    assert!(checked.0.decision.reason.contains("taken out"), "{:?}", checked.0.decision);
}

#[test]
fn the_group_that_is_old_is_the_one_that_is_named() {
    // Daily life asked more than three months before; the rest on the day.
    let old = Scene::arm().change("screening", "absent:", "asked: {daily-life: 2025-10-01}, absent:");
    let said: Vec<_> = old.check().of("screening-old").map(|one| one.message.clone()).collect();
    assert_eq!(said.len(), 1);
    assert!(said[0].contains("daily life (2025-10-01)"), "{said:?}");
    assert!(!said[0].contains("skin") && !said[0].contains("devices"), "{said:?}");
}

#[test]
fn a_clearing_of_what_is_not_there_is_told_once() {
    let count = |scene: Scene| scene.check().of("clearing-not-counted").count();
    // An item, and a finding, on one limb and on two.
    assert_eq!(count(Scene::leg().cleared("foot-wound", "podiatry")), 1);
    assert_eq!(count(Scene::leg().both("both legs").cleared("foot-wound", "podiatry")), 1);
    assert_eq!(count(Scene::arm().cleared("hand-part", "fitter")), 1);
    assert_eq!(count(Scene::arm().both("both arms").cleared("hand-part", "fitter")), 1);
    // Where it is there, nothing is told.
    assert_eq!(count(Scene::arm().seen("hand_swelling", "yes").cleared("hand-part", "fitter")), 0);
}
