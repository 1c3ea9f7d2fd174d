//! Answers settled: groups, sides, dates, clearings, re-orders, materials, what does not agree.

use tapeline::anatomy::{Limb, Side};
use tapeline::garment::Schemes;
use tapeline::input::{Named, Spot, Text};
use tapeline::record::Allergies;
use tapeline::rules::{AnsweredBy, Group, Role, Severity, Urgency};
use tapeline::screening::{
    Case, Clearing, Inconsistent, MaterialVerdict, Screened, WhyNoReOrder, WhyOpen, WhyVain,
    against_materials, allergy_words, inconsistencies,
};

use crate::screened::{
    ARM_GROUPS, LEG_GROUPS, TODAY, arm, both_legs, day, leg, leg_with, present, problems, read, rules,
    screen, screen_with,
};

fn open_ids(found: &Screened) -> Vec<&str> {
    found.unanswered.iter().map(|one| one.id.as_str()).collect()
}

fn ids(found: &Screened) -> Vec<&str> {
    found.present.iter().map(|one| one.item.as_str()).collect()
}

fn with_cleared(text: &str, entry: &str) -> String {
    format!("{text}cleared: [{{{entry}}}]\n")
}

fn decided(text: &str, item: &str) -> Clearing {
    screen(text).present(item).unwrap().clearing.clone()
}

fn why(clearing: Clearing) -> WhyVain {
    match clearing {
        Clearing::Vain(mut all) => all.remove(0).1,
        other => panic!("{other:?}"),
    }
}

/// Source: a healthy limb is asked nine groups, what was seen, allergies and cause (design of the questions).
#[test]
fn a_healthy_limb_leaves_nothing_open() {
    for (text, groups, seen) in [(arm(), 9, 5), (leg(), 8, 5)] {
        let found = screen(&text);
        assert!(found.unanswered.is_empty() && found.present.is_empty(), "{:?}", found.unanswered);
        assert!(found.asked && found.stale.is_empty() && !found.has_stop());
        let rules = rules();
        assert_eq!(rules.groups_of(found.limb).count(), groups);
        assert_eq!(rules.observed.iter().filter(|one| one.limbs.include(found.limb)).count(), seen);
    }
}

/// Source: an item not answered, or answered unknown, is never a pass.
#[test]
fn unknown_or_left_out_is_open_for_every_item() {
    let rules = rules();
    for (text, groups) in [(arm(), ARM_GROUPS), (leg(), LEG_GROUPS)] {
        let limb = screen(&text).limb;
        for item in rules.items.iter().filter(|item| {
            item.limbs.include(limb)
                && item.answered_by == AnsweredBy::Screening
                && !item.group.is_some_and(Group::is_of_re_order)
        }) {
            let group = item.group.unwrap().word();
            let unknown = text.replace("absent: [today", &format!("unknown: [{}], absent: [today", item.id));
            let others: Vec<&str> = rules
                .group(item.group.unwrap())
                .filter(|one| one.id != item.id && one.answered_by == AnsweredBy::Screening)
                .map(|one| one.id.as_str())
                .collect();
            let rest: Vec<&str> =
                groups.split(", ").filter(|one| *one != group).chain(others.iter().copied()).collect();
            let left_out =
                text.replace(&format!("absent: [{groups}]"), &format!("absent: [{}]", rest.join(", ")));
            for changed in [unknown, left_out] {
                assert_eq!(open_ids(&screen(&changed)), [item.id.as_str()], "{changed}");
            }
        }
        for group in groups.split(", ") {
            let unknown = text
                .replace(&format!("{group}, "), "")
                .replace(&format!(", {group}]"), "]")
                .replace("absent: [", &format!("unknown: [{group}], absent: ["));
            let found = screen(&unknown);
            let wanted: Vec<&str> = rules
                .group(Group::parse(group).unwrap())
                .filter(|one| one.limbs.include(limb) && one.answered_by == AnsweredBy::Screening)
                .map(|one| one.id.as_str())
                .collect();
            assert_eq!(open_ids(&found), wanted, "{group}");
        }
        let keys: &[&str] = if limb == Limb::Arm {
            &["pitting: none", "folds: no", "distortion: no", "hand_swelling: no", "swelling_beyond: no"]
        } else {
            &["pitting: none", "folds: no", "distortion: no", "foot_swelling: no", "swelling_beyond: no"]
        };
        for key in keys {
            let name = key.split(':').next().unwrap();
            assert_eq!(open_ids(&screen(&text.replace(key, &format!("{name}: unknown")))), [name]);
        }
        assert_eq!(open_ids(&screen(&text.replace("allergies: none\n", ""))), ["allergies"]);
        assert_eq!(
            open_ids(&screen(&text.replace("allergies: none", "allergies: [not asked]"))),
            ["allergies"]
        );
        assert_eq!(open_ids(&screen(&text.replace("cause: {known: yes, by: physician}\n", ""))), ["cause"]);
        assert_eq!(open_ids(&screen(&text.replace("known: yes, by: physician", "known: yes"))), ["cause"]);
        assert_eq!(open_ids(&screen(&text.replace("known: yes", "known: unknown"))), ["cause"]);
        assert_eq!(ids(&screen(&text.replace("known: yes", "known: no"))), ["cause-not-known"]);
    }
}

/// Source: a group stands for its items that are not named; lists and grades exclude each other.
#[test]
fn lists_and_grades_that_contradict_are_problems_at_their_place() {
    assert_eq!(problems(&arm()), "");
    assert_eq!(problems(&present(&arm(), "weak-hands, heart-failure-mild")), "");
    let cases = [
        (present(&arm(), "daily-life"), "`daily-life` is a group; name the items of it that are present"),
        (present(&arm(), "weak-hand"), "did you mean `weak-hands`?"),
        (present(&arm(), "weak-hands, weak-hands"), "`weak-hands` stands twice under `present`"),
        (
            present(&arm(), "weak-hands").replace("absent: [", "unknown: [weak-hands], absent: ["),
            "`weak-hands` stands under `present` as well",
        ),
        (arm().replace("absent: [", "unknown: [skin], absent: ["), "`skin` stands under `absent` as well"),
        (
            present(&arm(), "heart-failure-mild, heart-failure-severe"),
            "`heart-failure-severe` is another grade than `heart-failure-mild`",
        ),
        (present(&arm(), "cause-not-known"), "is answered by the record's `cause`"),
        (present(&arm(), "child"), "is answered by the record's `age_band`"),
        (present(&arm(), "folds"), "is answered by the record's `observed`"),
        (arm().replace("screening: {", "screening: {asked: {todya: 2026-03-14}, "), "did you mean `today`?"),
        (
            with_cleared(&arm(), "item: suspected-clot, role: physician, reason: r, cleared_on: 2026-03-14"),
            "`suspected-clot` is a stop, and a stop cannot be cleared",
        ),
        (
            with_cleared(
                &leg_with("abpi: 0.5"),
                "item: abpi, role: vascular, reason: r, cleared_on: 2026-03-14",
            ),
            "`abpi` is a stop",
        ),
        (
            with_cleared(&arm(), "item: skin, role: physician, reason: r, cleared_on: 2026-03-14"),
            "`skin` is a group",
        ),
        (
            with_cleared(&arm(), "item: paralyses, role: physician, reason: r, cleared_on: 2026-03-14"),
            "did you mean `paralysis`?",
        ),
        (
            with_cleared(
                &arm(),
                "item: paralysis, role: vascular team not reached, reason: r, cleared_on: 2026-03-14",
            ),
            "`vascular team not reached` is not known",
        ),
    ];
    for (text, wanted) in cases {
        let found = problems(&text);
        assert!(found.contains(wanted), "{wanted}\n{found}\n{text}");
        assert!(found.starts_with("record.yaml:"), "{found}");
    }
    // One grade answers its family.
    let graded = screen(&present(&arm(), "heart-failure-mild"));
    assert_eq!((ids(&graded), open_ids(&graded)), (vec!["heart-failure-mild"], vec![]));
    let alone = present(&arm().replace("heart-kidneys, ", ""), "heart-failure-mild");
    assert_eq!(open_ids(&screen(&alone)), ["kidney-liver", "general-swelling", "diabetes", "anticoagulant"]);
}

/// Source: house rules: today 7 days, skin and feeling 3 months, the rest 12 months with a caution from 3.
#[test]
fn answers_grow_old() {
    let rules = rules();
    let asked = |on: &str| screen(&arm().replace("asked_on: 2026-03-14", &format!("asked_on: {on}")));
    assert!(asked("2026-03-07").unanswered.is_empty());
    let groups = |found: &Screened| {
        let mut all: Vec<Group> = found.unanswered.iter().filter_map(|one| one.group).collect();
        all.dedup();
        all
    };
    assert_eq!(groups(&asked("2026-03-06")), [Group::Today]);
    assert_eq!(groups(&asked("2025-12-14")), [Group::Today]);
    let old = asked("2025-12-13");
    assert_eq!(groups(&old), [Group::Today, Group::Skin, Group::Feeling]);
    assert_eq!(old.stale.len(), 6);
    assert_eq!(groups(&asked("2025-03-14")).len(), 3);
    let gone = asked("2025-03-13");
    assert_eq!(groups(&gone).len(), rules.groups_of(Limb::Arm).count());
    assert!(matches!(gone.unanswered[0].why, WhyOpen::RunOut(_)));
    // Ahead of today, or without any date, no absent answer counts; a present one always does.
    for changed in [
        arm().replace("asked_on: 2026-03-14", "asked_on: 2031-01-01"),
        arm().replace("asked_on: 2026-03-14, ", ""),
        arm().replace("asked_on: 2026-03-14", "asked_on: 1901-03-14"),
    ] {
        assert_eq!(groups(&screen(&changed)).len(), 9);
    }
    let stop = present(&arm(), "septic-signs").replace("asked_on: 2026-03-14", "asked_on: 2020-01-01");
    assert!(screen(&stop).has_stop());
    // A group may carry its own date.
    let again = arm().replace("asked_on: 2026-03-14", "asked_on: 2026-02-01, asked: {today: 2026-03-14}");
    assert!(screen(&again).unanswered.is_empty());
}

/// Source: under `limb: both` the sided groups are answered for each side.
#[test]
fn sides_are_answered_apart() {
    let text = both_legs("abpi: 1.0", "abpi: 1.0");
    for limb in [0, 1] {
        assert!(screen_with(&text, &[], limb, TODAY).unanswered.is_empty());
    }
    // Answered at the top, a sided group is open on both.
    let top = text
        .replace("absent: [skin, feeling, ", "absent: [feeling, ")
        .replace("absent: [today, ", "absent: [today, skin, ");
    let found = screen_with(&top, &[], 0, TODAY);
    assert!(found.unanswered.iter().all(|one| one.group == Some(Group::Skin) && one.why == WhyOpen::NoSide));
    assert!(!found.unanswered.is_empty());
    // A sided finding is the limb's alone; without a side it is unknown for both.
    let one = text.replacen("circulation]}", "circulation], present: [open-wound]}", 1);
    assert_eq!(ids(&screen_with(&one, &[], 0, TODAY)), ["open-wound"]);
    assert_eq!(screen_with(&one, &[], 0, TODAY).present[0].side, Some(Side::Left));
    assert!(screen_with(&one, &[], 1, TODAY).present.is_empty());
    let none = text.replace("daily-life]}", "daily-life], present: [open-wound]}");
    for limb in [0, 1] {
        let found = screen_with(&none, &[], limb, TODAY);
        assert!(found.present.is_empty());
        assert!(found.unanswered.iter().all(|one| one.id == "open-wound" && one.why == WhyOpen::NoSide));
        assert_eq!(found.unanswered.len(), 1);
    }
    // A clearing without a side counts for neither.
    let entry = "item: open-wound, role: physician, reason: seen, cleared_on: 2026-03-14";
    let found = screen_with(&with_cleared(&one, entry), &[], 0, TODAY);
    assert_eq!(why(found.present[0].clearing.clone()), WhyVain::NoSide);
}

#[test]
fn items_of_the_other_limb_are_a_note() {
    let found = screen(&present(&leg(), "dialysis-access"));
    assert_eq!(found.of_other_limb, ["dialysis-access"]);
    assert!(found.present.is_empty());
}

/// Source: the closed list of roles, per item; a stop is cleared by nobody.
#[test]
fn every_item_is_cleared_by_its_roles_alone() {
    let rules = rules();
    for text in [arm(), leg()] {
        let limb = screen(&text).limb;
        for item in &rules.items {
            let skip =
                item.answered_by != AnsweredBy::Screening || item.group.is_some_and(Group::is_of_re_order);
            if skip || !item.limbs.include(limb) || item.mildest(limb) != Severity::ClearFirst {
                continue;
            }
            if item.id == "feeling-lost-diabetes" || item.id == "kidney-liver" {
                continue;
            }
            for (role, who) in Role::WORDS {
                let entry = format!(
                    "item: {}, role: {role}, by: protocol P1, reason: seen, cleared_on: {TODAY}",
                    item.id
                );
                let made = decided(&with_cleared(&present(&text, &item.id), &entry), &item.id);
                let may = item.cleared_by.iter().any(|one| one.role == who);
                assert_eq!(made.is_cleared(), may, "{} {role} {made:?}", item.id);
            }
        }
    }
}

/// Source: issue of the screening: "not the vascular team", a fitter, a patient.
#[test]
fn the_conditions_of_a_clearing() {
    let by = |text: &str, item: &str, more: &str| {
        let entry = format!("item: {item}, reason: seen, cleared_on: {TODAY}, {more}");
        decided(&with_cleared(&present(text, item), &entry), item)
    };
    assert!(matches!(why(by(&arm(), "feeling-reduced", "role: therapist")), WhyVain::Condition(_)));
    assert!(by(&arm(), "feeling-reduced", "role: therapist, by: protocol P1").is_cleared());
    assert!(by(&arm(), "paralysis", "role: therapist").is_cleared());
    let both = with_cleared(
        &present(&arm(), "paralysis, feeling-reduced"),
        &format!("item: paralysis, reason: seen, cleared_on: {TODAY}, role: therapist"),
    );
    assert!(matches!(why(decided(&both, "paralysis")), WhyVain::Condition(_)));
    assert!(by(&leg(), "open-wound", "role: therapist").is_cleared());
    assert!(matches!(
        why(by(&leg_with("abpi: 0.7"), "open-wound", "role: therapist")),
        WhyVain::Condition(_)
    ));
    assert!(matches!(why(by(&leg_with(""), "open-wound", "role: therapist")), WhyVain::Condition(_)));
    assert!(by(&arm(), "open-wound", "role: therapist").is_cleared());
    assert!(by(&leg(), "arterial-walking-pain", "role: physician").is_cleared());
    assert!(matches!(
        why(by(&leg_with(""), "arterial-walking-pain", "role: physician")),
        WhyVain::Condition(_)
    ));
    assert!(by(&leg_with(""), "arterial-walking-pain", "role: vascular").is_cleared());
    assert!(matches!(by(&arm(), "paralysis", "role: physician, decision: refused"), Clearing::Refused(_)));
    // Refused stays refused, whatever else is written.
    let twice = format!(
        "{}cleared:\n  - {{item: paralysis, role: physician, reason: no, cleared_on: {TODAY}, decision: refused}}\n  - {{item: paralysis, role: physician, reason: yes, cleared_on: {TODAY}}}\n",
        present(&arm(), "paralysis")
    );
    assert!(matches!(decided(&twice, "paralysis"), Clearing::Refused(_)));
    // A clearing of something that is not there is said.
    let vain =
        with_cleared(&arm(), &format!("item: paralysis, role: physician, reason: seen, cleared_on: {TODAY}"));
    assert_eq!(screen(&vain).not_there[0].1, WhyVain::NotThere);
    let nobody = with_cleared(
        &leg_with(""),
        &format!("item: arterial-unknown, role: vascular, reason: seen, cleared_on: {TODAY}"),
    );
    assert_eq!(screen(&nobody).not_there[0].1, WhyVain::Nobody);
}

/// Source: Rabe 2020 (severe neuropathy); the toe pressure's passing band.
#[test]
fn lost_feeling_in_diabetes_is_a_stop_without_a_sound_toe() {
    let weight = |text: &str| {
        let found = screen(&present(text, "feeling-lost-diabetes, diabetes"));
        found.present("feeling-lost-diabetes").unwrap().severity
    };
    assert_eq!(weight(&leg()), Severity::Stop);
    assert_eq!(weight(&leg_with("abpi: 1.0, toe: 60")), Severity::ClearFirst);
    assert_eq!(weight(&leg_with("abpi: 1.0, toe: 59.9")), Severity::Stop);
    assert_eq!(weight(&leg_with("toe: 75").replace("2026-03-10", "2025-03-10")), Severity::Stop);
    let wound = present(&leg_with("toe: 75"), "feeling-lost-diabetes, diabetes, foot-wound");
    assert_eq!(screen(&wound).present("feeling-lost-diabetes").unwrap().severity, Severity::Stop);
    let open = leg_with("toe: 75").replace("absent: [", "unknown: [foot-wound], absent: [");
    assert_eq!(weight(&open), Severity::Stop);
}

#[test]
fn weights_that_hang_on_limb_or_cause() {
    let of = |text: &str, item: &str| screen(&present(text, item)).present(item).unwrap().severity;
    assert_eq!(of(&arm(), "heart-failure-moderate"), Severity::Caution);
    assert_eq!(of(&leg(), "heart-failure-moderate"), Severity::ClearFirst);
    assert_eq!(of(&arm(), "kidney-liver"), Severity::Caution);
    assert_eq!(of(&arm().replace("known: yes", "known: no"), "kidney-liver"), Severity::ClearFirst);
    assert_eq!(of(&leg(), "kidney-liver"), Severity::ClearFirst);
    assert_eq!((of(&arm(), "diabetes"), of(&leg(), "diabetes")), (Severity::Note, Severity::Caution));
}

/// Source: urgencies of the questions' table; `soon` is today plus 14 days (house rule).
#[test]
fn urgency_follows_the_item() {
    let of = |item: &str| screen(&present(&leg(), item)).present(item).unwrap().urgency;
    assert_eq!(of("septic-signs"), Urgency::Emergency);
    assert_eq!(of("acute-infection"), Urgency::SameDay);
    assert_eq!(of("bypass-shallow"), Urgency::Soon);
    assert_eq!(of("foot-wound"), Urgency::SameDay);
    assert_eq!(of("active-cancer"), Urgency::Routine);
    assert!(screen(&present(&leg(), "acute-infection")).postpone);
    assert_eq!(screen(&leg()).soon, Some(day("2026-03-28")));
    let low = leg_with("abpi: 0.5");
    assert_eq!(screen(&low).arterial.unwrap().stop_urgency, Urgency::Soon);
    for item in ["arterial-rest-pain", "foot-wound"] {
        assert_eq!(screen(&present(&low, item)).arterial.unwrap().stop_urgency, Urgency::SameDay);
    }
}

#[test]
fn a_child_is_cleared_by_physician_or_prescriber() {
    let child = arm().replace("affected: left", "affected: left\nage_band: child");
    assert_eq!(ids(&screen(&child)), ["child"]);
    for (role, may) in [("physician", true), ("prescriber", true), ("therapist", false), ("fitter", false)] {
        let entry = format!("item: child, role: {role}, reason: seen, cleared_on: {TODAY}");
        assert_eq!(decided(&with_cleared(&child, &entry), "child").is_cleared(), may, "{role}");
    }
}

/// Source: the re-order with nothing changed: four questions, hand or foot, and the girths.
#[test]
fn a_re_order_rests_on_an_earlier_record() {
    let then = arm().replace("2026-03-14", "2025-10-01");
    let now = arm()
        .replace(
            &format!("absent: [{ARM_GROUPS}]"),
            "unchanged_since: 2025-10-01, absent: [today, skin, feeling, changes, wear]",
        )
        .replace("allergies: none\n", "")
        .replace("cause: {known: yes, by: physician}\n", "")
        .replace(
            "pitting: none, folds: no, distortion: no, hand_swelling: no, swelling_beyond: no",
            "hand_swelling: no",
        );
    let of = |now: &str, then: &[&str]| screen_with(now, then, 0, TODAY);
    let found = of(&now, &[&then]);
    assert!(found.unanswered.is_empty(), "{:?}", found.unanswered);
    assert_eq!(found.re_order.unwrap().why_not, None);
    let why = |now: &str, then: &[&str]| {
        let found = of(now, then);
        assert!(found.unanswered.len() > 10);
        found.re_order.unwrap().why_not.unwrap()
    };
    assert_eq!(why(&now, &[]), WhyNoReOrder::NoRecord);
    assert_eq!(why(&now, &[&then.replace("K-0001", "K-0002")]), WhyNoReOrder::NoRecord);
    assert_eq!(why(&now, &[&then.replace("left", "right")]), WhyNoReOrder::NoRecord);
    let old = (now.replace("2025-10-01", "2025-03-13"), then.replace("2025-10-01", "2025-03-13"));
    assert_eq!(why(&old.0, &[&old.1]), WhyNoReOrder::TooOld);
    assert_eq!(why(&now, &[&then.replace("circulation, ", "")]), WhyNoReOrder::NotFull);
    assert_eq!(why(&now.replace("changes, wear", "changes"), &[&then]), WhyNoReOrder::Changed);
    for list in ["present", "unknown"] {
        for item in ["any-change", "wear-harm"] {
            let said = now.replace("changes, wear]", &format!("changes, wear], {list}: [{item}]"));
            assert_eq!(why(&said, &[&then]), WhyNoReOrder::Changed, "{list} {item}");
        }
    }
    assert_eq!(why(&format!("{now}infections: [2025-12-01]\n"), &[&then]), WhyNoReOrder::Infection);
    // What the earlier record found present is still there.
    assert_eq!(ids(&of(&now, &[&present(&then, "weak-hands")])), ["weak-hands"]);
    // Without the skin looked at anew its answer has run out.
    let skin = of(&now.replace("today, skin, feeling", "today, feeling"), &[&then]);
    assert!(skin.unanswered.iter().all(|one| one.group == Some(Group::Skin)) && !skin.unanswered.is_empty());
}

fn verdict(allergies: &[&str], materials: Option<&[&str]>) -> MaterialVerdict {
    let rules = rules();
    let named: Vec<Named> =
        allergies.iter().map(|text| Named { text: (*text).to_owned(), spot: Spot(0) }).collect();
    let words =
        allergy_words(&if named.is_empty() { Allergies::None } else { Allergies::Some(named) }, rules);
    let materials: Option<Vec<Text>> =
        materials.map(|list| list.iter().map(|one| Text::new(one).unwrap()).collect());
    against_materials(&words, materials.as_deref(), rules)
}

/// Source: generic fibre names (natural rubber is elastodiene; polyamide is nylon; elastane is spandex).
#[test]
fn allergies_against_materials() {
    let hit = |allergy: &str, material: &str| {
        matches!(verdict(&[allergy], Some(&["cotton", material])), MaterialVerdict::Match { .. })
    };
    for (allergy, material) in [
        ("latex", "natural rubber"),
        ("latex", "elastodiene"),
        ("Natural Rubber", "Latex"),
        ("nylon", "polyamide"),
        ("polyamide", "nylon 22 %"),
        ("spandex", "elastane"),
        ("polyurethane", "elastane"),
        ("silicone", "silicone band"),
        ("latex gloves", "elastodiene"),
        ("lattex", "lattex"),
    ] {
        assert!(hit(allergy, material), "{allergy} {material}");
    }
    for (allergy, material) in
        [("elastane", "polyurethane"), ("latex", "polyamide"), ("penicillin", "polyamide")]
    {
        assert!(!hit(allergy, material), "{allergy} {material}");
    }
    assert_eq!(verdict(&[], None), MaterialVerdict::Clear);
    assert_eq!(verdict(&["pollen"], None), MaterialVerdict::Clear);
    assert_eq!(verdict(&["latex"], None), MaterialVerdict::Unknown { word: None });
    assert_eq!(verdict(&["latex"], Some(&[])), MaterialVerdict::Unknown { word: None });
    assert!(matches!(verdict(&["latex"], Some(&["microfibre"])), MaterialVerdict::Unknown { word: Some(_) }));
    assert!(matches!(verdict(&["latex"], Some(&["latex free"])), MaterialVerdict::Unknown { word: Some(_) }));
    let rules = rules();
    let words = |text: &str| {
        allergy_words(&Allergies::Some(vec![Named { text: text.to_owned(), spot: Spot(0) }]), rules)
    };
    assert_eq!(words("lattex").unknown.len(), 1);
    assert!(words("don't know").is_open);
    assert_eq!(words("peanuts").other_things.len(), 1);
}

fn disagree(text: &str) -> Vec<Inconsistent> {
    let record = read(text);
    let (rules, schemes) = (rules(), Schemes::default());
    let case = Case {
        record: &record,
        limb: &record.limbs[0],
        earlier: &[],
        rules,
        schemes: &schemes,
        today: day(TODAY),
        worsening: false,
        grown: false,
    };
    inconsistencies(&case)
}

/// Source: issue of the screening; ages: six months for girths published, the rest house rules.
#[test]
fn what_does_not_agree_is_said() {
    assert!(disagree(&arm()).is_empty() && disagree(&leg()).is_empty());
    let other = disagree(&arm().replace("affected: left", "affected: right"));
    assert!(matches!(other[0], Inconsistent::NotAffected { side: Side::Left, confirmed: false, .. }));
    assert!(other[0].is_open());
    let confirmed = format!("{}confirmed: [affected]\n", arm().replace("affected: left", "affected: none"));
    assert!(!disagree(&confirmed)[0].is_open());
    let ahead = disagree(&arm().replace("asked_on: 2026-03-14", "asked_on: 2031-01-01"));
    assert!(matches!(ahead[0], Inconsistent::Ahead { .. }) && ahead[0].is_open());
    for (on, wanted) in [("2025-12-14", None), ("2025-12-13", Some(false)), ("2025-09-13", Some(true))] {
        let found = disagree(&arm().replace("measured_on: 2026-03-14", &format!("measured_on: {on}")));
        let beyond = found.iter().find_map(|one| match one {
            Inconsistent::GirthsOld { beyond, .. } => Some(*beyond),
            _ => None,
        });
        assert_eq!(beyond, wanted, "{on}");
    }
    let apart = |values: &str| {
        disagree(&leg_with(values)).iter().any(|one| matches!(one, Inconsistent::IndexApart { .. }))
    };
    assert!(apart("abpi: 1.08, ankle_systolic: 75, brachial_systolic: 150"));
    assert!(!apart("abpi: 1.0, ankle_systolic: 115, brachial_systolic: 100"));
    let undated = leg_with("clinical: adequate").replace("taken_on: 2026-03-10, ", "");
    assert!(disagree(&undated).contains(&Inconsistent::AssessmentNotCounted {
        role: true,
        date: true,
        found: true
    }));
    assert!(disagree(&undated).contains(&Inconsistent::ArterialUndated));
    let recent = format!("{}infections: [2026-03-01]\n", arm());
    assert!(matches!(disagree(&recent)[0], Inconsistent::SoonAfterInfection { .. }));
    assert!(disagree(&format!("{}infections: [2026-02-14]\n", arm())).is_empty());
    let on_arm = format!("{}arterial: {{taken_on: 2026-03-10, abpi: 1.0}}\n", arm());
    assert_eq!(disagree(&on_arm), [Inconsistent::ArterialOnArm]);
}

/// Source: worsening reopens older answers on the cause (follow-up rules).
#[test]
fn worsening_opens_older_answers_on_the_cause() {
    let text = arm().replace("asked_on: 2026-03-14", "asked_on: 2026-03-14, asked: {cause: 2026-01-10}");
    let record = read(&text);
    let (rules, schemes) = (rules(), Schemes::default());
    let case = Case {
        record: &record,
        limb: &record.limbs[0],
        earlier: &[],
        rules,
        schemes: &schemes,
        today: day(TODAY),
        worsening: true,
        grown: false,
    };
    let found = tapeline::screening::settle(&case);
    assert_eq!(open_ids(&found), ["suspected-recurrence", "active-cancer"]);
}
