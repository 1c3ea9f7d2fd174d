//! The one decision says the most urgent first, invites to nothing that has to wait, and names what ends it.

use tapeline::report::build;

use tapeline::rules::Urgency;

use crate::scene::{Checked, Scene};

/// Head, headline and next step of a check.
fn said(checked: &Checked) -> String {
    let decision = &checked.0.decision;
    format!("{} {}", decision.reason, decision.next)
}

fn who(checked: &Checked) -> Vec<&'static str> {
    checked.0.decision.who.iter().map(|one| one.word()).collect()
}

fn next_of<'c>(checked: &'c Checked, id: &str) -> &'c str {
    checked.0.findings.iter().find(|one| one.id.text() == id).map_or("", |one| one.next.as_str())
}

/// Source: a wound on the foot is referred within one working day (published, NICE); an allergen takes the
/// garment out (house rule) and hurries nobody.
#[test]
fn what_cannot_wait_stands_in_the_headline_whatever_brought_the_outcome() {
    let wound = Scene::leg().present("foot-wound");
    let allergen = wound.clone().set("allergies", "[nylon]").check();
    assert_eq!(allergen.outcome(), "stop");
    assert_eq!(allergen.0.decision.urgency, Urgency::SameDay);
    assert!(
        said(&allergen).contains("Today, beside it: A wound or ulcer on the foot"),
        "{}",
        said(&allergen)
    );
    assert_eq!(who(&allergen), ["podiatry", "vascular", "fitter"]);
    let tumour = Scene::leg().present("foot-wound, suspected-skin-cancer").check();
    assert_eq!((tumour.outcome(), tumour.0.decision.urgency), ("stop", Urgency::SameDay));
    assert!(said(&tumour).contains("they clear it before fitting"), "{}", said(&tumour));
    // Cleared it presses no more; an allergen alone is routine.
    let cleared = wound.set("allergies", "[nylon]").cleared("foot-wound", "podiatry").check();
    assert_eq!((cleared.outcome(), cleared.0.decision.urgency), ("stop", Urgency::Routine));
    assert_eq!(who(&cleared), ["fitter"]);
}

/// Source: roles of the rules.
#[test]
fn everyone_who_may_act_on_what_is_decisive_is_named() {
    let two = Scene::arm().present("arm-artery-disease, general-swelling").check();
    let mut named = who(&two);
    named.sort_unstable();
    assert_eq!(named, ["physician", "vascular"]);
    assert_eq!(two.0.decision.urgency, Urgency::Soon);
    assert_eq!(who(&Scene::arm().present("general-swelling").check()), ["physician"]);
}

/// Source: feeling lost with diabetes is a stop beside a wound on the foot (safety table).
#[test]
fn the_wound_that_makes_a_stop_is_named() {
    let leg = |items: &str| {
        Scene::leg().set("arterial", "{taken_on: 2026-03-10, abpi: 1.05, toe: 60}").present(items).check()
    };
    let wound = leg("feeling-lost-diabetes, diabetes, foot-wound");
    assert_eq!((wound.outcome(), wound.0.decision.urgency), ("stop", Urgency::SameDay));
    assert!(said(&wound).contains("The wound on the foot makes it a stop"), "{}", said(&wound));
    let none = leg("feeling-lost-diabetes, diabetes");
    assert_eq!(none.outcome(), "refer");
    assert!(!said(&none).contains("makes it a stop"));
}

/// Source: under stop and refer nothing invites to fit or to order (house rule).
#[test]
fn an_order_waits_under_stop_and_refer() {
    let shape = Scene::arm().seen("folds", "yes").seen("hand_swelling", "yes");
    let refer = shape.check();
    assert_eq!(refer.outcome(), "refer");
    for id in ["shape-irregular", "hand-part-needed"] {
        assert!(next_of(&refer, id).starts_with("When this is settled: "), "{}", next_of(&refer, id));
    }
    let stop = Scene::arm().seen("folds", "yes").present("acute-infection").check();
    assert!(next_of(&stop, "shape-irregular").starts_with("When this is settled: "));
    let made = Scene::arm().seen("folds", "yes").check();
    assert_eq!(made.outcome(), "made-to-measure");
    assert!(next_of(&made, "shape-irregular").starts_with("A certified fitter takes"));
    // The chart's line says both.
    let line = &build(&refer.0).limbs[0].charts[0].line;
    assert!(line.contains("the shape asks for made to measure; something must be cleared first"), "{line}");
}

/// Source: a cap exceeded is lifted by nobody (house rule).
#[test]
fn another_class_is_asked_for_above_a_cap_on_arm_and_leg() {
    let cap = |mmhg: &str| {
        Scene::arm().present("cannot-report").set(
            "cleared",
            &format!("[{{item: cannot-report, role: therapist, reason: seen, cleared_on: 2026-03-14, cap: {mmhg}}}]"),
        )
    };
    let above = cap("20").check();
    assert_eq!(above.outcome(), "refer");
    assert!(said(&above).contains("allowed on this arm"), "{}", said(&above));
    let line = build(&above.0).limbs[0].charts[0].line.clone();
    assert!(line.contains("another class is needed"), "{line}");
    assert!(!format!("{} {line}", said(&above)).contains("cleared first"));
    assert_eq!(cap("32").check().outcome(), "trial-fitting");
    let leg = Scene::leg().set("arterial", "{taken_on: 2026-03-10, abpi: 1.05, cap: 20}").check();
    assert!(said(&leg).contains("allowed on this leg"), "{}", said(&leg));
    // Without class and fabric it is the figure that is missing.
    let bare = cap("20")
        .chart_with("scheme: ral-gz-387-2\nclass: \"2\"\n", "")
        .set("prescribed", "{range: 15-20 mmHg, by: consultant}")
        .check();
    assert!(
        bare.of("cap-exceeded").any(|one| one.message.contains("its class is missing, or its fabric")),
        "{:?}",
        bare.ids()
    );
}

/// Source: where nothing is known of the arteries nobody clears it (house rule).
#[test]
fn a_missing_value_is_asked_for_not_cleared() {
    let none = Scene::leg().without("arterial").check();
    assert!(said(&none).starts_with("A value or an assessment is needed"), "{}", said(&none));
    let low = Scene::leg().set("arterial", "{taken_on: 2026-03-10, abpi: 0.7}").check();
    assert!(said(&low).starts_with("Something must be cleared"), "{}", said(&low));
}

/// Source: refused stays refused (house rule).
#[test]
fn a_refusal_invites_to_no_second_clearing() {
    let decided = |decision: &str| {
        Scene::arm().present("cannot-report").set(
            "cleared",
            &format!("[{{item: cannot-report, role: therapist, decision: {decision}, reason: seen, cleared_on: 2026-03-14}}]"),
        )
    };
    let refused = decided("refused").check();
    assert_eq!(refused.outcome(), "refer");
    assert!(said(&refused).contains("Ask the therapist what is done instead"), "{}", said(&refused));
    assert!(!said(&refused).contains("clears it"), "{}", said(&refused));
    assert_eq!(who(&refused), ["therapist"]);
    assert_eq!(decided("cleared").check().outcome(), "trial-fitting");
}

/// Source: girths taken in an acute infection are not used (published, Lymphoedema Framework 2006).
#[test]
fn girths_of_an_infection_give_no_pressures() {
    let report = build(&Scene::arm().present("acute-infection").check().0);
    assert_eq!(report.limbs[0].charts[0].verdict, "not-judged");
    assert!(report.limbs[0].pressure.is_empty());
    let other = build(&Scene::arm().present("new-weakness").check().0);
    assert!(!other.limbs[0].pressure.is_empty());
}

/// Source: a stop of any age stays until measured anew; over 12 months nothing passes (house rules).
#[test]
fn what_is_too_old_says_what_still_holds() {
    let leg = |abpi: &str| {
        let checked =
            Scene::leg().set("arterial", &format!("{{taken_on: 2025-03-13, abpi: {abpi}}}")).check();
        checked.of("arterial-old").next().map_or_else(String::new, |one| one.message.clone())
    };
    assert!(leg("0.5").contains("the stop holds until they are measured anew"), "{}", leg("0.5"));
    assert!(leg("1.0").contains("they pass no more"), "{}", leg("1.0"));
    // Answers likewise: the reason stands beside the open questions.
    let asked = |day: &str| {
        let scene =
            Scene::arm().change("screening", "absent:", &format!("asked: {{daily-life: {day}}}, absent:"));
        scene.check().of("not-answered").map(|one| one.message.clone()).collect::<String>()
    };
    assert!(asked("2025-03-13").contains("answered too long ago, on 2025-03-13"), "{}", asked("2025-03-13"));
    assert_eq!(asked("2025-03-14"), "");
}

/// Source: a re-order holds only without worsening (house rule); a limb that grew beyond measuring while the
/// other was not measured cannot be told from one.
#[test]
fn a_limb_that_grew_unmeasured_against_the_other_ends_the_short_form() {
    let today = |girths: &str| {
        let then = Scene::arm().girths(girths).set("measured_on", "2025-12-14").change(
            "screening",
            "2026-03-14",
            "2025-12-14",
        );
        Scene::arm()
            .set(
                "screening",
                "{asked_on: 2026-03-14, by: R2, unchanged_since: 2025-12-14, absent: [today, skin, feeling, changes, wear]}",
            )
            .earlier(&then)
            .check()
    };
    let grown = today("wrist@0=15.5 forearm@14=23.7 upper-arm@33=28.3");
    let why: String = grown.of("re-order-not-held").map(|one| one.message.clone()).collect();
    assert!(why.contains("larger than measuring explains"), "{why}");
    assert_eq!(today("wrist@0=17 forearm@14=26 upper-arm@33=31").outcome(), "trial-fitting");
}
