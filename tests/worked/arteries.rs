//! Arterial values of a leg at their limits.

use serde_json::Value;
use tapeline::garment::Schemes;
use tapeline::input::Source;
use tapeline::rules::read_rules;

use crate::direct::{ARM_ANSWERS, arm, both, findings, has, leg, record, report, word};
use crate::support::root;

const MARKS: [&str; 2] = ["landmark: ankle, at: 11, girth: 22.9", "landmark: calf, at: 31, girth: 38.2"];

fn with(arterial: &str) -> String {
    leg(&MARKS).replace("arterial: {on: 2026-03-10, abpi: 1.0}", arterial)
}

/// The severity of a finding, or `pass`.
fn weight(report: &Value, id: &str) -> String {
    findings(report).into_iter().find(|(one, _)| one == id).map_or("pass".to_owned(), |(_, weight)| weight)
}

#[track_caller]
fn weighs(arterial: &str, id: &str, wanted: &str) {
    let made = report(&with(&format!("arterial: {{on: 2026-03-10, {arterial}}}")), &[]);
    assert_eq!(weight(&made, id), wanted, "{arterial}");
}

#[test]
fn the_index() {
    // Rabe 2020, Phlebology 35:447 (published): below 0.6 stop; Team 2019, WP&R J 27:74 (published): 0.6 to
    // below 0.8 review; to 1.3 pass, above review (secondary).
    for (index, wanted) in [
        ("0", "stop"),
        ("0.59", "stop"),
        ("0.5999", "stop"),
        ("0.60", "review"),
        ("0.79", "review"),
        ("0.80", "pass"),
        ("1.30", "pass"),
        ("1.31", "review"),
        ("2.5", "review"),
    ] {
        weighs(&format!("abpi: {index}"), "abpi", wanted);
    }
}

#[test]
fn the_absolute_pressures() {
    // Rabe 2020 (published): ankle below 60 mmHg stop, toe below 30, transcutaneous oxygen below 20;
    // ankle 60 to below 70 review (secondary).
    for (systolic, wanted) in [("59.9", "stop"), ("60.0", "review"), ("69.9", "review"), ("70.0", "pass")] {
        weighs(&format!("abpi: 1, ankle_systolic: {systolic}"), "ankle-systolic", wanted);
    }
    for (toe, wanted) in [("0", "stop"), ("29.9", "stop"), ("30.0", "pass")] {
        weighs(&format!("abpi: 1, toe: {toe}"), "toe", wanted);
    }
    for (oxygen, wanted) in [("19.9", "stop"), ("20", "pass")] {
        weighs(&format!("abpi: 1, tcpo2: {oxygen}"), "tcpo2", wanted);
    }
    // The same in kPa, 7.50061575845657 mmHg each (derived): 7.99 is 59.93 mmHg, 8 is 60.005.
    weighs("abpi: 1, ankle_systolic: 7.99 kPa", "ankle-systolic", "stop");
    weighs("abpi: 1, ankle_systolic: 8 kPa", "ankle-systolic", "review");
}

#[test]
fn the_quotient_and_the_pressure_are_both_judged() {
    // 0.65 of a brachial 90 is an ankle of 58.5 mmHg: the index alone would be a review (derived).
    let made = report(&with("arterial: {on: 2026-03-10, ankle_systolic: 58.5, brachial_systolic: 90}"), &[]);
    assert!(has(&made, "abpi", "review") && has(&made, "ankle-systolic", "stop"));
    assert_eq!(word(&made, "/outcome"), "stop");
    // Quotients exactly at the limits: 54/90 = 0.6, 72/90 = 0.8, 117/90 = 1.3 (derived).
    weighs("ankle_systolic: 54, brachial_systolic: 90", "abpi", "review");
    weighs("ankle_systolic: 53.9, brachial_systolic: 90", "abpi", "stop");
    weighs("ankle_systolic: 72, brachial_systolic: 90", "abpi", "pass");
    weighs("ankle_systolic: 71.9, brachial_systolic: 90", "abpi", "review");
    weighs("ankle_systolic: 117, brachial_systolic: 90", "abpi", "pass");
    weighs("ankle_systolic: 117.1, brachial_systolic: 90", "abpi", "review");
    // A stated index goes before the quotient.
    weighs("abpi: 1.0, ankle_systolic: 71, brachial_systolic: 142", "abpi", "pass");
}

#[test]
fn a_leg_without_index() {
    let no_abpi = |arterial: &str, more: &str| {
        let made = report(&(with(arterial) + more), &[]);
        weight(&made, "no-abpi")
    };
    let range = |high: &str| format!("prescribed: {{range: 10-{high} mmHg}}\n");
    // Derbyshire JAPC (published): above 20 mmHg review, up to 20 care if nothing speaks against it.
    assert_eq!(no_abpi("", &range("20")), "care");
    assert_eq!(no_abpi("", &range("20.1")), "review");
    // Unknown or open ends count as above 20.
    assert_eq!(no_abpi("", ""), "review");
    assert_eq!(no_abpi("", "prescribed: {scheme: ral-gz-387-1, class: \"4\"}\n"), "review");
    assert_eq!(no_abpi("", "prescribed: {scheme: bs-6612, class: \"1\"}\n"), "care");
    // A circulation item yes or open.
    let open = with("")
        .replace("none_of: [circulation, ", "unknown: [suspected-arterial-disease], none_of: [circulation, ");
    assert!(has(&report(&(open + &range("20")), &[]), "no-abpi", "review"));
    // A clinical assessment covers pressures up to its cap.
    let assessed =
        |cap: &str| format!("arterial: {{on: 2026-03-10, clinical: adequate, clinical_by: GP, cap: {cap}}}");
    assert_eq!(no_abpi(&assessed("25"), &range("25")), "pass");
    assert_eq!(no_abpi(&assessed("24.9"), &range("25")), "review");
    assert_eq!(no_abpi(&assessed("25"), ""), "review");
    // Without a cap it covers nothing above 20.
    assert_eq!(no_abpi("arterial: {on: 2026-03-10, clinical: adequate}", &range("20")), "care");
    let inadequate = report(&with("arterial: {on: 2026-03-10, abpi: 1, clinical: inadequate}"), &[]);
    assert!(has(&inadequate, "clinical", "review"));
    // An arm is not asked.
    let made = report(&arm(&["landmark: wrist, at: 0, girth: 16.9"]), &[]);
    assert_eq!(weight(&made, "no-abpi"), "pass");
    assert!(made["outcome"].is_null());
}

#[test]
fn the_age_of_the_values() {
    // Six calendar months before 2026-03-14 (published: measurements older than 6 months are re-taken).
    for (on, wanted) in [("2025-09-14", "pass"), ("2025-09-13", "care")] {
        let made = report(&with(&format!("arterial: {{on: {on}, abpi: 1}}")), &[]);
        assert_eq!(weight(&made, "arterial-old"), wanted, "{on}");
    }
    assert_eq!(weight(&report(&with("arterial: {abpi: 1}"), &[]), "arterial-old"), "care");
}

#[test]
fn the_age_of_girths_and_answers() {
    // Girths: over 3 months care, over 6 review; answers: over 3 months care (house rules), calendar months.
    let aged = |from: &str, to: &str| report(&leg(&MARKS).replace(from, to), &[]);
    for (measured, wanted) in [
        ("2026-03-14", "pass"),
        ("2025-12-14", "pass"),
        ("2025-12-13", "care"),
        ("2025-09-14", "care"),
        ("2025-09-13", "review"),
    ] {
        let made = aged("measured: 2026-03-14", &format!("measured: {measured}"));
        assert_eq!(weight(&made, "girths-old"), wanted, "{measured}");
    }
    for (asked, wanted) in [("2025-12-14", "pass"), ("2025-12-13", "care")] {
        let made = aged("asked_on: 2026-03-14", &format!("asked_on: {asked}"));
        assert_eq!(weight(&made, "screening-old"), wanted, "{asked}");
    }
}

#[test]
fn the_stricter_guideline_is_the_default_and_the_other_is_data() {
    // S2k guideline 037/005 (secondary): stop below 0.5; NYHA III stop.
    let rules =
        read_rules(Some(Source::read(&root().join("garment-tables/thresholds/s2k.yaml")).unwrap())).unwrap();
    let of = |index: &str| {
        let text = with(&format!("arterial: {{on: 2026-03-10, abpi: {index}}}"));
        let open = record(&text, &rules).unwrap();
        let made: Value = serde_json::from_str(&both(&open, Vec::new(), &rules).0).unwrap();
        weight(&made, "abpi")
    };
    assert_eq!(
        (of("0.49"), of("0.5"), of("0.79"), of("0.8")),
        ("stop".into(), "review".into(), "review".into(), "pass".into())
    );
    assert!(Schemes::default().find("icc-2006").is_some());
}

#[test]
fn an_unknown_answer_is_never_a_pass() {
    // Every question by itself: unknown, or left out, is unanswered and the outcome is not try-on.
    let rules = crate::direct::rules();
    let sound = report(&arm(&["landmark: wrist, at: 0, girth: 16.9"]), &[]);
    assert_eq!(sound["screening"]["unanswered"], serde_json::json!([]));
    for item in rules.items.iter().filter(|item| item.limbs.include(tapeline::anatomy::Limb::Arm)) {
        let Some(group) = item.group else { continue };
        let unknown = ARM_ANSWERS.replace("none_of", &format!("unknown: [{}], none_of", item.id));
        let others: Vec<&str> =
            rules.group(group).filter(|other| other.id != item.id).map(|other| other.id.as_str()).collect();
        let left_out = ARM_ANSWERS
            .replace(&format!("{}, ", group.word()), "")
            .replace(&format!(", {}]", group.word()), "]")
            .replace("none_of", &format!("no: [{}], none_of", others.join(", ")));
        for answers in [unknown, left_out] {
            let text = arm(&["landmark: wrist, at: 0, girth: 16.9"]).replace(ARM_ANSWERS, &answers);
            let made = report(&text, &[]);
            assert_eq!(made["screening"]["unanswered"], serde_json::json!([item.id]), "{answers}");
            assert_eq!(word(&made, "/outcome"), "incomplete", "{}", item.id);
        }
    }
}
