//! What a record says and what it leaves open: allergies without words, protocols without a name, refusals by
//! others, sides that are not named, a stop whose values are old.

use crate::scene::{Checked, Scene};

/// The sentences of the clearings that do not count.
fn not_counted(checked: &Checked) -> Vec<String> {
    checked.of("clearing-not-counted").map(|one| one.message.clone()).collect()
}

fn cleared(entries: &str) -> Scene {
    Scene::arm().present("feeling-reduced").set("cleared", &format!("[{entries}]"))
}

/// Source: an unanswered question is never a pass (house rule); an empty list answers nothing.
#[test]
fn allergies_without_a_word_stay_open() {
    for open in ["[]", "unknown", "[unknown]", "not asked", "[not asked]", "Not known", "[latex, unknown]"] {
        let checked = Scene::arm().set("allergies", open).check();
        assert_eq!(checked.outcome(), "incomplete", "{open}");
        assert_eq!(checked.severities("not-answered"), ["caution"], "{open}");
    }
    assert_eq!(Scene::arm().set("allergies", "none").check().outcome(), "trial-fitting");
    assert_eq!(Scene::arm().set("allergies", "[latex]").check().outcome(), "trial-fitting");
    assert!(Scene::arm().set("allergies", "latex").problems()[0].contains("write `[latex]`"));
}

/// Source: light touch not felt is cleared by a therapist by protocol only (secondary, as the rules say).
#[test]
fn a_protocol_without_its_name_is_none() {
    let by = |protocol: &str| {
        cleared(&format!(
            "{{item: feeling-reduced, role: therapist, by: {protocol}, reason: seen, cleared_on: 2026-03-14}}"
        ))
        .check()
    };
    let bare = by("protocol");
    assert_eq!(bare.outcome(), "refer");
    assert!(not_counted(&bare)[0].contains("does not name it"), "{:?}", not_counted(&bare));
    assert_eq!(by("protocol F1").outcome(), "trial-fitting");
    // Where no protocol is asked for, the bare word takes nothing away.
    let physician = cleared(
        "{item: feeling-reduced, role: physician, by: protocol, reason: seen, cleared_on: 2026-03-14}",
    );
    assert_eq!(physician.check().outcome(), "trial-fitting");
}

/// Source: a role that may not clear an item does not count, and is said (house rule).
#[test]
fn a_refusal_by_one_who_may_not_clear_does_not_count() {
    let refused = |role: &str| {
        cleared(&format!(
            "{{item: feeling-reduced, role: {role}, decision: refused, reason: seen, cleared_on: 2026-03-14}}, {{item: feeling-reduced, role: physician, reason: seen, cleared_on: 2026-03-14}}"
        ))
        .check()
    };
    let other = refused("fitter");
    assert_eq!(other.outcome(), "trial-fitting");
    let said = not_counted(&other);
    assert!(said[0].contains("refusal of feeling reduced by a certified fitter does not count"), "{said:?}");
    assert_eq!(refused("podiatry").outcome(), "refer");
}

/// Source: paralysis is cleared by a therapist where light touch is felt; feeling lost with diabetes is not
/// felt (house rule, the stricter reading).
#[test]
fn a_therapist_clears_paralysis_only_where_light_touch_is_felt() {
    let leg = |items: &str| {
        Scene::leg()
            .set("arterial", "{taken_on: 2026-03-10, abpi: 1.05, toe: 70}")
            .present(items)
            .set(
                "cleared",
                "[{item: paralysis, role: therapist, reason: seen, cleared_on: 2026-03-14}, {item: feeling-lost-diabetes, role: physician, reason: seen, cleared_on: 2026-03-14}]",
            )
            .check()
    };
    assert_eq!(leg("paralysis, feeling-lost-diabetes, diabetes").outcome(), "refer");
    assert_eq!(leg("paralysis, feeling-altered").outcome(), "trial-fitting");
    let arm = Scene::arm().present("paralysis").cleared("paralysis", "therapist");
    assert_eq!(arm.check().outcome(), "trial-fitting");
}

/// Source: under `limb: both` a sided group without a side is unknown for both (house rule).
#[test]
fn a_sided_item_without_a_side_is_unknown_for_both() {
    let top = Scene::leg().both("both legs").present("foot-wound");
    let checked = top.check();
    assert_eq!(checked.outcome(), "incomplete");
    assert_eq!(checked.of("not-answered").count(), 2);
    // A side's own answer to the item is an answer; said otherwise without a side, it is a problem.
    let named = |list: &str| {
        top.clone().change("left", "screening: {absent: [", &format!("screening: {{{list}absent: ["))
    };
    let problems = top.clone().change("left", "absent: [skin", "absent: [foot-wound, skin").problems();
    assert!(problems[0].contains("write it for each side"), "{problems:?}");
    assert_eq!(named("present: [foot-wound], ").check().outcome(), "refer");
    // What belongs to the client needs no side.
    let client = Scene::leg().both("both legs").present("frail").check();
    assert_eq!(client.outcome(), "trial-fitting");
    assert_eq!(client.of("frail").count(), 1);
}

/// Source: a stop of any age stays until measured anew (house rule): that no route is there adds nothing.
#[test]
fn beside_an_arterial_stop_nothing_more_is_asked_of_the_arteries() {
    let leg = |arterial: &str| Scene::leg().set("arterial", arterial).check();
    for stop in ["taken_on: 2020-03-13, abpi: 0.5", "abpi: 0.5", "taken_on: 2026-03-15, abpi: 0.5"] {
        let checked = leg(&format!("{{{stop}}}"));
        assert_eq!(checked.outcome(), "stop", "{stop}");
        assert_eq!(checked.of("arterial-unknown").count(), 0, "{stop}");
    }
    let old = leg("{taken_on: 2020-03-13, abpi: 1.0}");
    assert_eq!(old.severities("arterial-unknown"), ["clear-first"]);
}

/// Source: a clearing is dated not before the answer (house rule); an age has no day of its own.
#[test]
fn a_child_may_be_cleared_before_the_day_of_measuring() {
    let on = |day: &str| {
        Scene::arm()
            .set("age_band", "child")
            .set("cleared", &format!("[{{item: child, role: physician, reason: seen, cleared_on: {day}}}]"))
            .check()
            .outcome()
    };
    assert_eq!(on("2026-02-01"), "trial-fitting");
    assert_eq!(on("2025-09-14"), "trial-fitting");
    assert_eq!(on("2025-09-13"), "refer");
}
