//! The arterial decision of a leg: routes, ages, caps (the edges of each value: `tests/conformance/arterial.yaml`). Restated from the sources named.

use tapeline::rules::{ArterialValue, Severity};
use tapeline::screening::{ArterialDecision, Clearing, WhyVain};

use crate::screened::{leg, leg_with, present, rules, screen, screen_with};

fn decision(arterial: &str) -> ArterialDecision {
    screen(&leg_with(arterial)).arterial.unwrap()
}

/// `stop`, `clear-first`, `caution` or `pass`.
fn weighs(decision: &ArterialDecision) -> &'static str {
    match decision.worst() {
        Some(severity) => severity.word(),
        None if decision.passes => "pass",
        None => "no route",
    }
}

/// Source: memory (high): the index reads falsely normal with stiff arteries.
#[test]
fn a_normal_index_with_diabetes_or_kidney_failure_is_a_caution() {
    for item in ["diabetes", "kidney-liver"] {
        let found = screen(&present(&leg(), item)).arterial.unwrap();
        assert_eq!((weighs(&found), found.passes), ("caution", true), "{item}");
    }
}

/// Source: a UK hosiery guide (above 20 mmHg an index is needed); British Lymphology Society 2018.
#[test]
fn a_leg_without_a_route() {
    let rules = rules();
    let none = decision("");
    assert_eq!(none.unknown(Some(20.0), rules), Some(Severity::Caution));
    assert_eq!(none.unknown(Some(20.1), rules), Some(Severity::ClearFirst));
    assert_eq!(none.unknown(None, rules), Some(Severity::ClearFirst));
    assert_eq!(decision("abpi: 1").unknown(None, rules), None);
    for item in ["arterial-walking-pain", "bypass-deep-or-stent", "diabetes", "kidney-liver"] {
        let found = screen(&present(&leg_with(""), item)).arterial.unwrap();
        assert_eq!(found.unknown(Some(10.0), rules), Some(Severity::ClearFirst), "{item}");
    }
    let unknown =
        leg_with("").replace("circulation, ", "").replace("]}\nall", "], unknown: [circulation]}\nall");
    let found = screen(&unknown).arterial.unwrap();
    assert_eq!(found.unknown(Some(10.0), rules), Some(Severity::ClearFirst));
}

/// Source: house rules: over 6 calendar months a caution, over 12 no pass; a stop stays at any age.
#[test]
fn values_grow_old() {
    let of = |taken: &str, values: &str| {
        let text = leg_with(values).replace("taken_on: 2026-03-10", &format!("taken_on: {taken}"));
        screen(&text).arterial.unwrap()
    };
    assert!(of("2025-03-14", "abpi: 1.0").passes);
    assert!(!of("2025-03-13", "abpi: 1.0").has_route);
    assert!(!of("2026-03-15", "abpi: 1.0").has_route);
    assert_eq!(weighs(&of("2019-01-01", "abpi: 0.5")), "stop");
    assert_eq!(weighs(&of("2019-01-01", "abpi: 0.7")), "clear-first");
    let undated = leg_with("abpi: 1.0").replace("taken_on: 2026-03-10, ", "");
    assert!(!screen(&undated).arterial.unwrap().has_route);
    // A toe pressure of last year decides no high index.
    assert_eq!(weighs(&of("2025-03-13", "abpi: 1.4, toe: 90")), "clear-first");
}

fn cleared(values: &str, entry: &str) -> Clearing {
    let text = format!("{}cleared: [{{{entry}}}]\n", leg_with(values));
    let found = screen(&text).arterial.unwrap();
    found.values.into_iter().find(|one| one.value == ArterialValue::Abpi).unwrap().clearing
}

/// Source: Team 2019 (podiatry by protocol up to 20 mmHg with a referral); the closed roles.
#[test]
fn a_band_is_cleared_by_its_roles_with_a_cap() {
    let entry = |more: &str| format!("item: abpi, reason: seen, cleared_on: 2026-03-12, {more}");
    let of = |more: &str| cleared("abpi: 0.65", &entry(more));
    assert!(of("role: vascular, cap: 40").is_cleared());
    for role in ["fitter", "therapist", "physician", "surgery"] {
        let Clearing::Vain(why) = of(&format!("role: {role}, cap: 20")) else { panic!("{role}") };
        assert!(matches!(why[0].1, WhyVain::Role(_)), "{role}");
    }
    let why = |more: &str| match of(more) {
        Clearing::Vain(mut all) => all.remove(0).1,
        other => panic!("{other:?}"),
    };
    assert_eq!(why("role: vascular"), WhyVain::NoCap);
    assert!(matches!(why("role: podiatry, cap: 20"), WhyVain::Condition(_)));
    assert_eq!(why("role: podiatry, by: protocol P1, cap: 20"), WhyVain::NoReferral);
    assert_eq!(
        why("role: podiatry, by: protocol P1, cap: 20.1, referred_on: 2026-03-12"),
        WhyVain::CapAboveProtocol(20.1)
    );
    assert!(of("role: podiatry, by: protocol P1, cap: 20, referred_on: 2026-03-12").is_cleared());
    assert!(matches!(of("role: vascular, cap: 20, decision: refused"), Clearing::Refused(_)));
    // The cap as a class: its upper end (class 1 of that scheme ends at 21 mmHg, published).
    let text = format!(
        "{}cleared: [{{{}}}]\n",
        leg_with("abpi: 0.65"),
        entry("role: vascular, cap: class 1 of ral-gz-387-1")
    );
    assert_eq!(screen(&text).cap_mmhg, Some(21.0));
    // The cap written with the values serves, and the least holds.
    let both = cleared("abpi: 0.65, cap: 15", &entry("role: vascular, cap: 40"));
    assert!(both.is_cleared());
    let text = format!("{}cleared: [{{{}}}]\n", leg_with("abpi: 0.65, cap: 15"), entry("role: vascular"));
    let found = screen(&text);
    assert_eq!(found.cap_mmhg, Some(15.0));
    let arterial = found.arterial.unwrap();
    assert!(arterial.is_above_cap(15.1) && !arterial.is_above_cap(15.0));
}

/// Source: dates by one rule: a clearing ahead of today, before the value or run out does not count.
#[test]
fn the_dates_of_a_clearing() {
    let of = |more: &str| {
        cleared("abpi: 0.65", &format!("item: abpi, role: vascular, reason: seen, cap: 20, {more}"))
    };
    let why = |more: &str| match of(more) {
        Clearing::Vain(mut all) => all.remove(0).1,
        other => panic!("{more} {other:?}"),
    };
    assert_eq!(why("cleared_on: 2026-03-15"), WhyVain::Ahead);
    assert!(matches!(why("cleared_on: 2026-03-09"), WhyVain::BeforeAnswer(_)));
    assert!(matches!(why("cleared_on: 2026-03-11, until: 2026-03-13"), WhyVain::RunOut(_)));
    assert!(of("cleared_on: 2026-03-10, until: 2026-03-14").is_cleared());
    let old = format!(
        "{}cleared: [{{item: abpi, role: vascular, reason: seen, cap: 20, cleared_on: 2025-09-14}}]\n",
        leg_with("abpi: 0.65").replace("taken_on: 2026-03-10", "taken_on: 2025-09-01")
    );
    assert!(screen(&old).arterial.unwrap().values[0].clearing.is_cleared());
    assert!(!screen_with(&old, &[], 0, "2026-03-15").arterial.unwrap().values[0].clearing.is_cleared());
}

/// Source: each leg by itself: a sound leg's value passes no other.
#[test]
fn each_leg_by_itself() {
    let text = crate::screened::both_legs("abpi: 1.0", "");
    let (left, right) = (screen_with(&text, &[], 0, "2026-03-14"), screen_with(&text, &[], 1, "2026-03-14"));
    assert!(left.arterial.unwrap().passes);
    assert!(!right.arterial.unwrap().has_route);
    // A clearing that names no side is for neither.
    let cleared = format!(
        "{}cleared: [{{item: abpi, role: vascular, reason: seen, cap: 20, cleared_on: 2026-03-12}}]\n",
        crate::screened::both_legs("abpi: 0.65", "abpi: 0.7")
    );
    let found = screen_with(&cleared, &[], 0, "2026-03-14").arterial.unwrap();
    assert!(matches!(&found.values[0].clearing, Clearing::Vain(why) if why[0].1 == WhyVain::NoSide));
}
