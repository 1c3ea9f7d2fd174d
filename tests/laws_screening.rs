//! Laws of the screening: one more fact never improves an outcome; unknown never passes.

use proptest::prelude::*;
use proptest::sample::{select, subsequence};
use tapeline::anatomy::Limb;
use tapeline::assessment::{ChartAssessment, Outcome};
use tapeline::rules::{AnsweredBy, Group, ItemRule, Role};

use crate::scene::{Checked, DEFAULT, Scene};

/// Items that a record may name on a limb.
fn items(limb: Limb) -> Vec<&'static ItemRule> {
    let own = DEFAULT.items.iter().filter(|item| item.limbs.include(limb));
    own.filter(|item| {
        item.answered_by == AnsweredBy::Screening && !item.group.is_some_and(Group::is_of_re_order)
    })
    .collect()
}

fn base(limb: Limb) -> Scene {
    match limb {
        Limb::Arm => Scene::arm(),
        Limb::Leg => Scene::leg(),
    }
}

/// The outcome of the run (none counts as the best) and of every chart.
fn outcomes(checked: &Checked) -> Vec<Outcome> {
    let run = checked.0.decision.outcome.unwrap_or(Outcome::TrialFitting);
    let charts = checked.0.limbs.iter().flat_map(|limb| limb.charts.iter().map(ChartAssessment::outcome));
    std::iter::once(run).chain(charts).collect()
}

#[track_caller]
fn never_better(before: &Scene, after: &Scene) {
    let (before, after) = (outcomes(&before.check()), outcomes(&after.check()));
    for (before, after) in before.iter().zip(&after) {
        assert!(after <= before, "{} became {}", before.word(), after.word());
    }
}

/// Two grades of one family exclude each other.
fn agree(one: &ItemRule, other: &ItemRule) -> bool {
    one.family.is_none() || one.family != other.family
}

/// Source: worst item wins; no points, no sums.
#[test]
fn a_second_item_never_improves_an_outcome() {
    for limb in [Limb::Arm, Limb::Leg] {
        let all = items(limb);
        let alone: Vec<Vec<Outcome>> =
            all.iter().map(|item| outcomes(&base(limb).present(&item.id).check())).collect();
        for (at, one) in all.iter().enumerate() {
            // Every fifth pair, each item with others all over the list: the rest is left to the drawn cases below.
            let pairs = all.iter().enumerate().skip(at + 1).filter(|(beside, _)| (at + beside) % 5 == 0);
            for (beside, other) in pairs.filter(|(_, other)| agree(one, other)) {
                let both = outcomes(&base(limb).present(&format!("{}, {}", one.id, other.id)).check());
                for (place, outcome) in both.iter().enumerate() {
                    assert!(
                        *outcome <= alone[at][place] && *outcome <= alone[beside][place],
                        "{} {}",
                        one.id,
                        other.id
                    );
                }
            }
        }
    }
}

/// Source: an item not answered, or answered unknown, is never a pass.
#[test]
fn unknown_never_passes() {
    for limb in [Limb::Arm, Limb::Leg] {
        for item in items(limb) {
            let open = base(limb).unknown(&item.id);
            assert!(outcomes(&open.check())[0] <= Outcome::Incomplete, "{}", item.id);
        }
        for key in ["pitting", "folds", "distortion", "swelling_beyond"] {
            assert!(outcomes(&base(limb).seen(key, "unknown").check())[0] <= Outcome::Incomplete, "{key}");
        }
        for key in ["allergies", "cause"] {
            assert!(outcomes(&base(limb).without(key).check())[0] <= Outcome::Incomplete, "{key}");
        }
    }
}

/// What a scene may be told besides: each makes it no better.
fn told(scene: Scene, what: usize, limb: Limb) -> Scene {
    match what {
        0 => scene.seen("folds", "yes"),
        1 => scene.seen("distortion", "yes"),
        2 => scene.seen("pitting", "strong"),
        3 => scene.seen("swelling_beyond", "yes"),
        4 => scene.seen(if limb == Limb::Arm { "hand_swelling" } else { "foot_swelling" }, "yes"),
        5 => scene.set("allergies", "[latex]"),
        6 => scene.set("allergies", "[nylon]"),
        7 => scene.set("age_band", "child"),
        8 => scene.set("cause", "{known: no}"),
        9 => scene.set("infections", "[2026-03-08]"),
        10 => scene.set("affected", if limb == Limb::Arm { "right" } else { "left" }),
        _ => scene,
    }
}

const TOLD: usize = 11;

/// Arterial values, from good to bad; a worse one never improves.
const VALUES: [&str; 8] = [
    "abpi: 1.1",
    "abpi: 1.0, tcpo2: 45",
    "abpi: 0.75",
    "abpi: 0.75, toe: 45",
    "abpi: 1.45",
    "abpi: 1.0, toe: 29",
    "abpi: 0.4",
    "ankle_systolic: 50",
];

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn one_more_fact_never_improves_an_outcome(
        is_arm in any::<bool>(),
        picked in subsequence((0..80_usize).collect::<Vec<_>>(), 0..5),
        more in 0..80_usize,
        also in 0..TOLD + 4,
        then in 0..TOLD,
        values in select(&VALUES[..]),
        role in select(Role::WORDS.map(|(word, _)| word).to_vec()),
        unknown in any::<bool>(),
    ) {
        let limb = if is_arm { Limb::Arm } else { Limb::Leg };
        let all = items(limb);
        let mut present: Vec<&ItemRule> = Vec::new();
        for place in picked {
            let item = all[place % all.len()];
            if present.iter().all(|one| one.id != item.id && agree(one, item)) {
                present.push(item);
            }
        }
        let more = all[more % all.len()];
        prop_assume!(present.iter().all(|one| one.id != more.id && agree(one, more)));
        let ids = |list: &[&ItemRule]| list.iter().map(|one| one.id.clone()).collect::<Vec<_>>().join(", ");
        let mut scene = told(base(limb), also, limb);
        if limb == Limb::Leg {
            scene = scene.set("arterial", &format!("{{taken_on: 2026-03-10, {values}}}"));
        }
        let clearable = |item: &&&ItemRule| item.mildest(limb) > tapeline::rules::Severity::Stop;
        let cleared: Vec<String> = present
            .iter()
            .filter(clearable)
            .filter(|item| item.id != "feeling-lost-diabetes")
            .map(|one| format!("{{item: {}, role: {role}, by: protocol P, reason: r, cleared_on: 2026-03-14}}", one.id))
            .collect();
        if !cleared.is_empty() {
            scene = scene.set("cleared", &format!("[{}]", cleared.join(", ")));
        }
        let before = scene.clone().present(&ids(&present));
        let after = if unknown {
            before.clone().unknown(&more.id)
        } else {
            let mut with = present.clone();
            with.push(more);
            scene.clone().present(&ids(&with))
        };
        never_better(&before, &after);
        if also != then && (also, then) != (5, 6) && (also, then) != (6, 5) {
            never_better(&before, &told(before.clone(), then, limb));
        }
    }
}
