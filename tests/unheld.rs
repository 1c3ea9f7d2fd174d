//! What is not judged, or judged by a bound only, is said with its true reason, its way on and as a bound.
//!
//! Source: gradient rule, section 1: by ruler unlike knits are not judged across, each piece is within itself; and
//! section 3: a fall is judged only with no mark left out.

use tapeline::estimate::FallOf;
use tapeline::garment::Outfit;
use tapeline::gradient::{Action, Grade};
use tapeline::render::terminal_report;
use tapeline::report::build;

use crate::scene::{Checked, Scene};
use crate::worn_support::{arm, garment, linear, marks, on, piece, together};

use tapeline::anatomy::Landmark::{Axilla, Forearm, Hand, UpperArm, Wrist};

const SLEEVE: &str = "{wrist: 12.5, forearm: 20.8, upper-arm: 27}";

/// A piece of the run, its curve tested up to so many per cent (0 = none), and its relaxed girths.
struct Worn<'a> {
    name: &'a str,
    from: &'a str,
    upto: u32,
    relaxed: &'a str,
}

/// The base arm with these pieces worn together.
fn worn(pieces: &[Worn<'_>]) -> Checked {
    let folder = tempfile::tempdir().unwrap();
    let names: Vec<String> = pieces
        .iter()
        .map(|one| {
            let fabric = if one.upto > 0 {
                let knit = folder.path().join(format!("knit-{}.yaml", one.name));
                let text = format!(
                    "tapeline: fabric/1\nlabel: knit {}\nbasis: invented\ncurve: [{{stretch: 0 %, tension: 0 N/m}}, {{stretch: {} %, tension: {} N/m}}]\n",
                    one.name,
                    one.upto,
                    f64::from(one.upto) * 2.5
                );
                std::fs::write(&knit, text).unwrap();
                format!("fabric: {}\n", knit.display())
            } else {
                String::new()
            };
            let to = if one.from == "hand" { "wrist" } else { "upper-arm" };
            let text = format!(
                "tapeline: garment/1\nlabel: {}\nlimb: arm\nfrom: {}\nto: {to}\nmaterials: [polyamide]\n{fabric}units: {{length: cm}}\nrelaxed: {}\n",
                one.name, one.from, one.relaxed
            );
            let path = folder.path().join(format!("{}.yaml", one.name));
            std::fs::write(&path, text).unwrap();
            format!("{{garment: {}}}", path.display())
        })
        .collect();
    let text =
        format!("tapeline: garment/1\nlabel: both\nlimb: arm\nworn_together: [{}]\n", names.join(", "));
    Scene::arm()
        .no_chart()
        .girths("hand@-7=19 wrist@0=17 forearm@14=26 upper-arm@33=31")
        .garment(&text)
        .check()
}

fn said(checked: &Checked, id: &str) -> Vec<String> {
    checked.of(id).map(|one| format!("{} → {}", one.message, one.next)).collect()
}

#[test]
fn a_piece_without_a_curve_is_the_reason_and_its_curve_the_way_on() {
    let inner = |upto| Worn { name: "inner", from: "wrist", upto, relaxed: SLEEVE };
    let outer = |upto| Worn { name: "outer", from: "forearm", upto, relaxed: "{forearm: 24, upper-arm: 29}" };
    let checked = worn(&[inner(60), outer(0)]);
    let told = said(&checked, "fall-unknown");
    assert_eq!(told.len(), 1);
    assert!(
        told[0].contains("not known: outer has no fabric curve, and unlike knits are not held"),
        "{told:?}"
    );
    assert!(told[0].contains("→ Get the tension curve of outer, or read"), "{told:?}");
    assert!(!told[0].contains("relaxed girth"), "every relaxed girth is known: {told:?}");
    let estimated = &checked.0.garments[0].estimated;
    assert_eq!((estimated.grade(), estimated.judged()), (Some(Grade::Undecided), Some(false)));
    let actions: Vec<Action> = checked.0.garments[0].decide.iter().map(|one| one.action).collect();
    assert_eq!(actions, [Action::Curve, Action::SensorReadings]);
    let text = terminal_report(&build(&checked.0), 300);
    assert!(text.contains("How the pieces fall together is not known"), "{text}");
    assert!(text.contains("By itself inner falls"), "{text}");
    // Neither has one: of one knit they could be held.
    let told = said(&worn(&[inner(0), outer(0)]), "fall-unknown");
    assert!(told[0].contains("inner and outer have no fabric curve"), "{told:?}");
    assert!(told[0].contains("If inner and outer are of one knit, name it as their fabric"), "{told:?}");
    // Just short of it: with both curves they are held against each other.
    let both = worn(&[inner(60), outer(60)]);
    assert!(!said(&both, "fall-unknown").iter().any(|one| one.contains("no fabric curve")));
    let verdict = both.0.garments[0].estimated.fall.clone().unwrap();
    assert!(verdict.unheld.is_none() && matches!(verdict.of, FallOf::Whole { .. }), "{verdict:?}");
}

#[test]
fn the_piece_that_lacks_a_relaxed_girth_is_named() {
    // A hand piece does not reach the forearm: only the sleeve lacks it.
    let sleeve = Worn { name: "sleeve", from: "wrist", upto: 60, relaxed: "{wrist: 12.5, upper-arm: 27}" };
    let hand = Worn { name: "hand piece", from: "hand", upto: 60, relaxed: "{hand: 15, wrist: 14}" };
    let told = said(&worn(&[sleeve, hand]), "fall-unknown");
    assert!(told[0].contains("the relaxed girth of sleeve is not known at the forearm."), "{told:?}");
    assert!(!told[0].contains("hand piece"), "{told:?}");
    let inner = Worn { name: "inner", from: "wrist", upto: 60, relaxed: SLEEVE };
    let outer = Worn { name: "outer", from: "wrist", upto: 0, relaxed: "{wrist: 14, upper-arm: 29}" };
    let told = said(&worn(&[inner, outer]), "fall-unknown");
    assert!(
        told[0].contains("the relaxed girth of outer is not known at the forearm, and outer has"),
        "{told:?}"
    );
    assert!(
        told[0].contains("→ Lay outer flat before it is worn, and measure its width at the forearm. Get")
    );
}

#[test]
fn the_curve_that_ends_too_early_is_the_one_that_is_named() {
    let inner = || Worn { name: "inner", from: "wrist", upto: 90, relaxed: SLEEVE };
    // 31 cm on 22 is 41 %: beyond 30, not beyond 60.
    let outer = |upto| Worn { name: "outer", from: "forearm", upto, relaxed: "{forearm: 24, upper-arm: 22}" };
    let told = said(&worn(&[inner(), outer(30)]), "beyond-tested");
    assert!(
        told[0].starts_with("The fabric of outer was tested to 30 % of stretch only; beyond it"),
        "{told:?}"
    );
    assert!(said(&worn(&[inner(), outer(60)]), "beyond-tested").is_empty());
}

#[test]
fn a_hand_piece_without_a_curve_leaves_the_sleeve_judged() {
    let cloth = linear("knit", 258.0, 200.0);
    let sleeve = |cm: [f64; 4]| {
        let at = [Wrist, Forearm, UpperArm, Axilla];
        garment("sleeve", Some(cloth.clone()), &std::array::from_fn::<_, 4, _>(|one| (at[one], cm[one])))
    };
    let hand = || garment("hand piece", None, &[(Hand, 15.0), (Wrist, 13.0)]);
    let falls = sleeve([12.0, 19.0, 25.4, 30.6]);
    let alone = on(&arm(), &Outfit::of(piece(falls.clone())), &[]);
    let both = on(&arm(), &together(vec![piece(falls), piece(hand())]), &[]);
    assert_eq!((alone.grade(), alone.judged()), (both.grade(), both.judged()));
    assert_eq!(both.judged(), Some(true));
    // A certain rise of the sleeve counts as it does alone.
    let rises = on(&arm(), &together(vec![piece(sleeve([12.8, 15.0, 22.4, 26.8])), piece(hand())]), &[]);
    assert_eq!(rises.grade(), Some(Grade::Certain));
    assert!(rises.is_taken_out());
}

#[test]
fn one_garment_of_unlike_knits_without_a_curve_says_so() {
    let mut one =
        garment("sleeve", None, &[(Wrist, 12.0), (Forearm, 19.0), (UpperArm, 25.4), (Axilla, 30.6)]);
    let curve = linear("knit", 258.0, 200.0);
    one.fabric = Some(curve.clone());
    let mut other = curve;
    other.label = crate::made::text("other knit");
    other.curve.clear();
    one.fabric_at = vec![(Forearm, other)];
    let found = on(&arm(), &Outfit::of(piece(one)), &[]);
    let verdict = found.fall.unwrap();
    assert_eq!((verdict.grade(), verdict.judged), (Grade::Undecided, false));
    assert_eq!(verdict.unheld.unwrap().landmarks, [Forearm]);
}

#[test]
fn parts_of_a_set_over_one_another_are_told_without_a_curve_too() {
    let told = |scene: Scene| scene.check().of("layers").map(|one| one.message.clone()).collect::<Vec<_>>();
    let set = Scene::arm()
        .chart(crate::scene::HAND_PIECE)
        .girths("hand@-7=19 wrist@0=17 forearm@14=26 upper-arm@33=31");
    let said = told(set);
    assert!(said[0].contains("lie over one another at the wrist"), "{said:?}");
    assert!(said[0].contains("not known without the fabric curve of"), "{said:?}");
    assert!(told(Scene::arm()).is_empty());
}

/// Source: a mark beyond the tested stretch presses at least K·T_last/C, so the chance of that rise is the least
/// that it can be: 258·0.3/25.7 against the wrist's 2.65 has Φ = 0.57, worked out in `fall`.
#[test]
fn a_chance_by_a_bound_is_said_as_the_least_that_it_can_be() {
    let cloth = |label: &str, upto: f64| linear(label, 258.0, upto);
    let inner = garment("inner", Some(cloth("long", 300.0)), &[(Wrist, 14.4), (UpperArm, 29.4)]);
    let mut outer = inner.clone();
    outer.relaxed.push((Forearm, tapeline::garment::Relaxed::once(crate::made::girth(12.0))));
    outer.relaxed.sort_by_key(|(at, _)| *at);
    outer.fabric_at = vec![(Forearm, cloth("short", 30.0))];
    let limb = marks(&[(Wrist, 0.0, 16.9), (Forearm, 14.0, 25.7), (UpperArm, 33.0, 32.4)]);
    let sentence = |one: &tapeline::garment::Garment| {
        let outfit = Outfit::of(piece(one.clone()));
        let found = on(&limb, &outfit, &[]);
        let fall = found.fall.as_ref().unwrap().fall.clone();
        (fall.grade, fall.by_bound, tapeline::assessment::fall_words(&outfit, &found, &[]).unwrap())
    };
    let (grade, by_bound, said) = sentence(&outer);
    assert_eq!((grade, by_bound), (Grade::Likely, true), "{said}");
    assert!(said.contains("(chance at least 57 %)"), "{said}");
    // Tested far enough it is no bound, and certain.
    outer.fabric_at = vec![(Forearm, cloth("short", 300.0))];
    let (_, by_bound, said) = sentence(&outer);
    assert!(!by_bound && !said.contains("at least"), "{said}");
}

/// Source: a law: with the exponent that was told the pieces together are graded as told; of two knits none is told.
#[test]
fn pieces_of_one_knit_turn_together_where_they_are_said_to() {
    use tapeline::estimate::{OnLimb, turning};
    use tapeline::garment::Exponent;
    let mut knit = linear("knit", 258.0, 200.0);
    knit.curve.clear();
    let limb = arm();
    let outfit = |exponent: Option<f64>, alike: bool, upper: f64| {
        let mut cloth = knit.clone();
        cloth.exponent = exponent.map(|value| Exponent::stated(value, None));
        let mut other = cloth.clone();
        if !alike {
            other.label = crate::made::text("other knit");
        }
        let inner = garment(
            "inner",
            Some(cloth),
            &[(Wrist, 12.0), (Forearm, 19.0), (UpperArm, 25.4), (Axilla, 30.6)],
        );
        let outer = garment("outer", Some(other), &[(Wrist, 13.0), (Forearm, 20.0), (UpperArm, upper)]);
        together(vec![piece(inner), piece(outer)])
    };
    let told = |outfit: &Outfit| {
        let found = on(&limb, outfit, &[]);
        turning(&OnLimb { limb: outfit.limb, marks: &limb }, outfit, &found, &crate::worn_support::rules())
    };
    let (mut turned, mut held) = (0, 0);
    for tenths in 200..=270_u32 {
        let upper = f64::from(tenths) / 10.0;
        let turns = told(&outfit(None, true, upper));
        turned += usize::from(!turns.is_empty());
        for turn in turns {
            for exponent in [turn.low, turn.high] {
                let grade = on(&limb, &outfit(Some(exponent), true, upper), &[]).grade().unwrap();
                let grade = if grade == Grade::None { Grade::Possible } else { grade };
                assert_eq!(grade, turn.grade, "{exponent} at {upper}");
                held += 1;
            }
        }
        assert!(told(&outfit(None, false, upper)).is_empty(), "two knits");
    }
    assert!(turned > 5 && held > 20, "{turned} {held}");
}

#[test]
fn the_next_step_of_one_garment_is_what_would_decide_it() {
    let folder = crate::support::folder(&[
        ("arm.yaml", &Scene::arm().girths("wrist@0=17 forearm@14=26 upper-arm@33=31 axilla@42=35").record()),
        (
            "open.yaml",
            "tapeline: garment/1\nlabel: g\nlimb: arm\nfrom: wrist\nto: axilla\nmaterials: [polyamide]\nunits: {length: cm}\nrelaxed: {wrist: 12.4, forearm: 17.8, upper-arm: 20.2, axilla: 21.5}\n",
        ),
    ]);
    let run = |form: &str| {
        crate::support::run_in(
            folder.path(),
            &["gradient", "arm.yaml", "open.yaml", "--format", form, "--today", "2026-03-14"],
            None,
        )
    };
    let json = run("json").json();
    let fall = &json["limbs"][0]["gradient"][0];
    assert_eq!(fall["grade"], "undecided", "{fall}");
    let first = &fall["decide"][0];
    let (words, chance) = (first["words"].as_str().unwrap(), first["chance"].as_f64().unwrap());
    let next = json["decision"]["next"].as_str().unwrap();
    assert!(next.to_lowercase().contains(words), "{next}: {words}");
    assert!(next.contains(&tapeline::words::chance(chance)), "{next}: {chance}");
    assert!(json["decision"]["outcome"].is_null());
    assert!(run("text").stdout.contains("NO OUTCOME: "));
}

/// Source: what is measured again is one flat width of one piece, or one girth: each is named once, by its piece, and
/// its chance is that of the mark and of the points just beyond an edge there, which share it.
#[test]
fn what_would_decide_names_the_piece_and_each_measurement_once() {
    use tapeline::assessment::decide_words;
    use tapeline::estimate::{OnLimb, what_decides};
    let cloth = || Some(linear("knit", 258.0, 200.0));
    let limb =
        marks(&[(Wrist, 0.0, 16.2), (Forearm, 14.0, 22.6), (UpperArm, 33.0, 28.7), (Axilla, 42.0, 31.0)]);
    let (mut open, mut named) = (0, 0);
    for tenths in 200..=260_u32 {
        let upper = f64::from(tenths) / 10.0;
        let inner = garment(
            "inner",
            cloth(),
            &[(Wrist, 13.1), (Forearm, 17.3), (UpperArm, 22.2), (Axilla, upper - 1.0)],
        );
        let outer = garment("outer", cloth(), &[(Wrist, 14.2), (Forearm, 19.3), (UpperArm, upper)]);
        let outfit = together(vec![piece(inner), piece(outer)]);
        let found = on(&limb, &outfit, &[]);
        let rules = crate::worn_support::rules();
        let all = what_decides(&OnLimb { limb: outfit.limb, marks: &limb }, &outfit, &[], &found, &rules);
        let words: Vec<String> = all.iter().map(|one| decide_words(&outfit, one)).collect();
        let mut once = words.clone();
        once.sort_unstable();
        once.dedup();
        assert_eq!(once.len(), words.len(), "{words:?}");
        open += usize::from(!words.is_empty());
        named += usize::from(
            words.iter().any(|one| one == "measure the flat width of outer again at the forearm"),
        );
    }
    assert!(open > 3 && named > 0, "{open} {named}");
}

/// Source: gradient rule: bounds and partial knowledge are never milder: a likely rise that shows without the marks
/// that cannot be held counts as a certain one does.
#[test]
fn a_likely_rise_counts_though_a_mark_cannot_be_held() {
    let cloth = || Some(linear("knit", 258.0, 200.0));
    let mut seen = std::collections::BTreeSet::new();
    for tenths in 200..=324_u32 {
        let inner =
            garment("inner", cloth(), &[(Wrist, 12.0), (Forearm, 19.0), (UpperArm, 25.4), (Axilla, 30.6)]);
        let outer = garment("outer", cloth(), &[(UpperArm, f64::from(tenths) / 10.0), (Axilla, 36.5)]);
        let hand = garment("hand piece", None, &[(Hand, 15.0), (Wrist, 13.0)]);
        let found = on(&arm(), &together(vec![piece(inner), piece(outer), piece(hand)]), &[]);
        let verdict = found.fall.unwrap();
        assert!(!verdict.judged || verdict.grade() <= Grade::Likely, "{verdict:?}");
        if let (FallOf::Whole { .. }, None) = (verdict.of, &verdict.unheld) {
            seen.insert(verdict.grade());
        }
    }
    assert!(seen.contains(&Grade::Certain) && seen.contains(&Grade::Likely), "{seen:?}");
}
