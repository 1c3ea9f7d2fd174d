//! Issue 10: what an earlier state of the tool passed that it must not, and referred that it need not.
//!
//! Source: each case as the issue tells it; the wanted outcome follows from the source named in the rules.

use tapeline::rules::{Severity, Urgency};

use crate::scene::{LEG_SEEN, Scene};

fn abpi(entry: &str) -> Scene {
    Scene::leg()
        .set("arterial", "{taken_on: 2026-03-10, abpi: 0.62}")
        .set("cleared", &format!("[{{item: abpi, reason: seen, cleared_on: 2026-03-12, {entry}}}]"))
}

#[test]
fn an_arterial_clearing_by_anyone() {
    let by_fitter = abpi("role: fitter, cap: 40").check();
    assert_eq!(by_fitter.outcome(), "refer");
    assert_eq!(by_fitter.severities("clearing-not-counted"), ["caution"]);
    assert!(abpi("role: patient, cap: 40").problems()[0].contains("`patient` is not known"));
    assert_eq!(abpi("role: vascular, cap: 40, decision: refused").check().outcome(), "refer");
    assert_eq!(abpi("role: vascular, cap: 40").check().outcome(), "trial-fitting");
    assert_eq!(abpi("role: vascular").check().outcome(), "refer");
}

#[test]
fn a_clearing_by_a_role_in_words() {
    let access = Scene::arm().present("dialysis-access");
    let words = access.clone().cleared("dialysis-access", "not the vascular team").problems();
    assert!(words[0].contains("is not known; accepted: physician, vascular"), "{words:?}");
    assert_eq!(access.clone().cleared("dialysis-access", "vascular").check().outcome(), "trial-fitting");
    assert_eq!(access.clone().cleared("dialysis-access", "physician").check().outcome(), "refer");
    assert_eq!(access.check().outcome(), "refer");
}

#[test]
fn a_stated_index_hides_nothing() {
    let stated = Scene::leg()
        .set("arterial", "{taken_on: 2026-03-10, abpi: 1.08, ankle_systolic: 75, brachial_systolic: 150}")
        .check();
    assert_eq!(stated.outcome(), "stop");
    assert_eq!(stated.severities("abpi"), ["stop"]);
}

#[test]
fn a_cap_is_held_against_the_class() {
    assert_eq!(abpi("role: vascular, cap: 15").check().outcome(), "refer");
    let written =
        abpi("role: vascular").set("arterial", "{taken_on: 2026-03-10, abpi: 0.61, cap: 15}").check();
    assert_eq!(written.outcome(), "refer");
    assert!(!written.severities("cap-exceeded").is_empty());
    // Nobody clears a garment above the cap.
    assert!(written.of("cap-exceeded").all(|one| one.who.is_empty()));
}

#[test]
fn every_value_is_judged() {
    let of = |values: &str| {
        Scene::leg().set("arterial", &format!("{{taken_on: 2026-03-10, {values}}}")).check().outcome()
    };
    assert_eq!(of("abpi: 1.05, toe: 31"), "refer");
    assert_eq!(of("abpi: 1.05, tcpo2: 21"), "refer");
    assert_eq!(of("abpi: 1.45, toe: 90"), "trial-fitting");
    assert_eq!(of("abpi: 1.45"), "refer");
}

const LEG_BLOCK: &str = "{marks: [{landmark: ankle, at: 11, girth: 23}, {landmark: calf, at: 31, girth: 38}, {landmark: mid-thigh, at: 59, girth: 51}], observed: SEEN, screening: {absent: [skin, feeling, cause, operations, circulation]}ARTERIAL}";

/// Both legs, sound but for what is said.
pub fn both_legs(left: &str, right: &str) -> Scene {
    let block = |arterial: &str| {
        let arterial = if arterial.is_empty() {
            String::new()
        } else {
            format!(", arterial: {{taken_on: 2026-03-10, {arterial}}}")
        };
        LEG_BLOCK.replace("SEEN", LEG_SEEN).replace("ARTERIAL", &arterial)
    };
    Scene::leg()
        .set("limb", "both legs")
        .set("affected", "both")
        .without("marks")
        .without("observed")
        .without("arterial")
        .set("left", &block(left))
        .set("right", &block(right))
        .set("screening", "{asked_on: 2026-03-14, absent: [today, heart-kidneys, daily-life]}")
}

#[test]
fn a_sound_leg_passes_no_other() {
    assert_eq!(both_legs("abpi: 1.05", "abpi: 1.0").check().outcome(), "trial-fitting");
    assert_eq!(both_legs("abpi: 1.05", "").check().outcome(), "refer");
    assert_eq!(both_legs("abpi: 1.05", "abpi: 0.5").check().outcome(), "stop");
}

#[test]
fn what_was_not_asked_is_asked() {
    for (item, outcome, urgency) in [
        ("cold-or-blue-limb", "stop", Urgency::Emergency),
        ("new-weakness", "stop", Urgency::Emergency),
        ("node-surgery", "refer", Urgency::Routine),
    ] {
        let found = Scene::arm().present(item).check();
        assert_eq!((found.outcome(), found.0.decision.urgency), (outcome, urgency), "{item}");
    }
    let recent = Scene::arm().set("infections", "[2026-03-04]").check();
    assert_eq!(recent.severities("infection-recent"), ["caution"]);
}

#[test]
fn the_wrong_side_is_asked_about() {
    let wrong = Scene::arm().set("affected", "right");
    assert_eq!(wrong.check().outcome(), "incomplete");
    assert_eq!(wrong.set("confirmed", "[affected]").check().outcome(), "trial-fitting");
}

#[test]
fn materials_by_any_of_their_names() {
    let of = |allergy: &str, material: &str| {
        Scene::arm()
            .set("allergies", &format!("[{allergy}]"))
            .chart_with("[polyamide]", &format!("[{material}]"))
            .check()
            .outcome()
    };
    assert_eq!(of("latex", "natural rubber"), "stop");
    assert_eq!(of("latex", "elastodiene"), "stop");
    assert_eq!(of("nylon", "polyamide"), "stop");
    assert_eq!(of("lattex", "polyamide"), "refer");
    assert_eq!(of("don't know", "polyamide"), "incomplete");
    assert_eq!(of("latex", "polyamide"), "trial-fitting");
    let unknown = Scene::arm().set("allergies", "[latex]").chart_with("materials: [polyamide]\n", "");
    assert_eq!(unknown.check().outcome(), "refer");
}

#[test]
fn pressure_far_off_or_with_nothing_to_hold_it_against() {
    let knit = "fabric: ../fabrics/knit-r2.yaml\nunits: {length: cm}";
    let tight = Scene::arm().chart_with("units: {length: cm}", knit).chart_with(
        "{wrist: 12.5, forearm: 20.8, upper-arm: 27}",
        "{wrist: 9.2, forearm: 15.5, upper-arm: 20}",
    );
    let found = tight.clone().set("prescribed", "{range: 23-32 mmHg}").check();
    assert_eq!(found.severities("off-band"), ["clear-first"]);
    assert_eq!(found.outcome(), "refer");
    let slack = Scene::arm()
        .chart_with("units: {length: cm}", knit)
        .chart_with("{wrist: 12.5, forearm: 20.8, upper-arm: 27}", "{wrist: 18, forearm: 27, upper-arm: 32}")
        .set("prescribed", "{range: 23-32 mmHg}")
        .check();
    assert_eq!(slack.outcome(), "refer");
    let bare = tight.chart_with("scheme: ral-gz-387-2\nclass: \"2\"\n", "").check();
    assert_eq!(bare.severities("nothing-to-hold"), ["clear-first"]);
    assert_eq!(bare.outcome(), "refer");
}

#[test]
fn dates_that_cannot_be_or_are_long_gone() {
    let asked =
        |on: &str| Scene::arm().change("screening", "asked_on: 2026-03-14", &format!("asked_on: {on}"));
    assert_eq!(asked("1901-03-14").check().outcome(), "incomplete");
    assert_eq!(asked("2031-03-14").check().outcome(), "incomplete");
    // Answers of December on the fitting day in March.
    assert_eq!(asked("2025-12-15").check().outcome(), "incomplete");
    let ahead = abpi("role: vascular, cap: 40").change("cleared", "2026-03-12", "2031-03-12").check();
    assert_eq!(ahead.outcome(), "refer");
    let assessed = "clinical: adequate, clinical_by: podiatry, clinical_found: both foot pulses";
    let of = |block: &str| Scene::leg().set("arterial", block).check().outcome();
    assert_eq!(of(&format!("{{{assessed}}}")), "refer");
    assert_eq!(of(&format!("{{taken_on: 2026-03-10, {assessed}}}")), "trial-fitting");
}

#[test]
fn measures_that_cannot_be() {
    let of = |marks: &str| Scene::arm().girths(marks).check().outcome();
    assert_eq!(of("wrist@0=17 forearm@14=11.4/40 upper-arm@33=31"), "incomplete");
    assert_eq!(of("hand@-8=182 wrist@0=17 forearm@14=26 upper-arm@33=31"), "incomplete");
    assert_eq!(of("wrist@0=17 forearm@14=26 upper-arm@33=31 axilla@42=3.7"), "incomplete");
    for at in ["21", "60"] {
        let long = Scene::arm()
            .girths(&format!("wrist@0=17 forearm@14=26 upper-arm@{at}=31"))
            .set("lengths", "{wrist to upper-arm: 42}");
        assert_eq!(long.check().outcome(), "incomplete", "{at}");
    }
}

#[test]
fn a_rules_file_lowers_nothing_in_silence() {
    let item = |why: &str| {
        format!(
            "items: [{{id: suspected-clot, limb: both, group: today, condition: c, severity: note, finding: f, next: n, basis: house rule, source: s{why}}}]"
        )
    };
    let said = Scene::arm().present("suspected-clot").rules(&item(", why: agreed in March")).check();
    assert_eq!(said.outcome(), "trial-fitting");
    let lowered: Vec<&str> = said.of("rules-lowered").map(|one| one.message.as_str()).collect();
    assert!(
        lowered.iter().any(|one| one.contains("note instead of stop") && one.contains("agreed in March"))
    );
    let text =
        format!("tapeline: rules/1\nid: own\nlabel: own\nsource: own\nextends: default\n{}\n", item(""));
    let source = tapeline::input::Source::of_text("own.yaml", text);
    assert!(tapeline::rules::read_rules(Some(source)).is_err());
}

#[test]
fn swelling_without_a_cause_is_referred() {
    for scene in [Scene::arm(), Scene::leg()] {
        let found = scene.set("cause", "{known: no}").check();
        assert_eq!((found.outcome(), found.0.decision.urgency), ("refer", Urgency::Soon));
    }
    assert_eq!(Scene::arm().without("cause").check().outcome(), "incomplete");
}

/// Stopped or referred without need, before.
#[test]
fn what_was_too_strict() {
    assert_eq!(Scene::leg().present("anticoagulant").check().outcome(), "trial-fitting");
    let steady = Scene::leg().present("heart-failure-moderate").shipped("awmf-037-005");
    assert_eq!(steady.clone().check().outcome(), "refer");
    assert_eq!(steady.cleared("heart-failure-moderate", "cardiology").check().outcome(), "trial-fitting");
    let hidden = "{taken_on: 2026-03-10, clinical: adequate, clinical_by: therapist, clinical_found: multiphasic Doppler}";
    assert_eq!(Scene::leg().set("arterial", hidden).check().outcome(), "trial-fitting");
    let bypass = Scene::leg().present("bypass-deep-or-stent").cleared("bypass-deep-or-stent", "vascular");
    assert_eq!(bypass.check().outcome(), "trial-fitting");
    let child = Scene::leg().set("age_band", "child");
    assert_eq!(child.clone().check().outcome(), "refer");
    assert_eq!(child.cleared("child", "prescriber").check().outcome(), "trial-fitting");
}

/// A re-order asks four questions; what was known before is still known.
#[test]
fn a_re_order_forgets_no_allergy_and_no_fold() {
    let then = Scene::arm().set("measured_on", "2025-11-14").change("screening", "2026-03-14", "2025-11-14");
    let now = |then: &Scene| {
        Scene::arm()
            .earlier(then)
            .without("allergies")
            .without("cause")
            .set("observed", "{hand_swelling: no}")
            .set(
                "screening",
                "{asked_on: 2026-03-14, unchanged_since: 2025-11-14, absent: [today, skin, feeling, changes, wear]}",
            )
            .check()
    };
    assert_eq!(now(&then).outcome(), "trial-fitting");
    assert_eq!(now(&then.clone().set("allergies", "[nylon]")).outcome(), "stop");
    assert_eq!(now(&then.clone().seen("folds", "yes")).outcome(), "made-to-measure");
    let weak = now(&then.clone().present("weak-hands"));
    assert_eq!(weak.severities("weak-hands"), [Severity::Caution.word()]);
    assert_eq!(now(&then.clone().present("cannot-report")).outcome(), "refer");
}
