//! The rule of the fall: cases that an earlier rule got wrong, and what must hold for every fall.

use tapeline::anatomy::{Landmark, Limb};
use tapeline::gradient::{
    Action, Band, FallMark, FallSetting, Grade, GradientBasis, MarkKind, Part, WrapPart, decide, judge,
    judge_grade, rise_somewhere,
};
use tapeline::quantity::phi;

use crate::fall_support::{Points, TAPE_SD, knit, mark, power, setting, worn};

/// Girths of the invented arm of the demo, with relaxed girths.
fn arm(relaxed: [f64; 4]) -> Vec<FallMark> {
    let places = [
        (Landmark::Wrist, 0.0, 16.9),
        (Landmark::Forearm, 14.0, 25.7),
        (Landmark::UpperArm, 33.0, 32.4),
        (Landmark::Axilla, 42.0, 37.2),
    ];
    places.iter().zip(relaxed).map(|((at, cm, girth), relaxed)| worn(*at, *cm, *girth, relaxed)).collect()
}

fn linear(upto: f64) -> Points {
    Points(vec![(0.0, 0.0), (upto, 258.0 * upto)])
}

fn read(values: &[(Landmark, f64, f64)]) -> Vec<FallMark> {
    let one = |(landmark, at, mmhg): &(Landmark, f64, f64)| FallMark {
        what: MarkKind::Read { mmhg: *mmhg, sd: 2.5 },
        ..mark(*landmark, *at, 30.0, Vec::new())
    };
    values.iter().map(one).collect()
}

fn by_readings(to: Landmark) -> FallSetting<'static> {
    FallSetting { basis: GradientBasis::Readings, ..setting(to.limb(), to, None) }
}

/// Source: issue 9. A forearm far beyond the curve's end was not judged with the curve and certain without.
#[test]
fn a_curve_that_ends_too_early_is_no_milder_than_none() {
    let curve = linear(0.6);
    let marks = arm([12.1, 12.9, 22.5, 27.2]);
    let with = judge(&marks, &setting(Limb::Arm, Landmark::Axilla, Some(&curve)));
    let without = judge(&marks, &setting(Limb::Arm, Landmark::Axilla, None));
    assert_eq!((with.grade, with.removes), (Grade::Certain, true));
    assert_eq!(without.grade, Grade::Certain);
    assert_eq!((with.place, with.judged), (Some(Landmark::Forearm), false));
    assert_eq!(with.left_out, vec![Landmark::Forearm]);
}

/// Source: issue 9. A sleeve that certainly rises on the demo arm, whatever else is worn below the wrist.
#[test]
fn a_sleeve_too_tight_at_the_forearm_is_certain_by_curve_and_by_ruler() {
    let curve = linear(3.0);
    for curve in [Some(&curve), None] {
        let fall = judge(&arm([12.8, 15.7, 22.4, 26.8]), &setting(Limb::Arm, Landmark::Axilla, curve));
        assert!(fall.grade <= Grade::Likely, "{fall:?}");
        assert_eq!((fall.place, fall.against), (Some(Landmark::Forearm), Some(Landmark::Wrist)));
    }
}

/// Source: issue 9. Equal readings are no fall; the readings of the issue do not reject.
#[test]
fn readings_that_are_equal_are_no_fall() {
    let places = [
        (Landmark::Ankle, 11.0),
        (Landmark::LowerCalf, 20.0),
        (Landmark::Calf, 31.0),
        (Landmark::BelowKnee, 40.0),
    ];
    let at = |values: [f64; 4]| {
        let marks: Vec<_> = places.iter().zip(values).map(|((at, cm), mmhg)| (*at, *cm, mmhg)).collect();
        judge(&read(&marks), &by_readings(Landmark::BelowKnee))
    };
    let equal = at([20.0; 4]);
    assert!(matches!(equal.grade, Grade::Undecided | Grade::Likely), "{equal:?}");
    let of_issue = at([20.0, 27.0, 24.0, 20.0]);
    assert_ne!(of_issue.grade, Grade::Certain, "{of_issue:?}");
}

/// Source: issue 9. A wrap whose calf lies 0.7 mmHg above was called a certain rise; its pull varies by 20 %.
#[test]
fn a_wrap_does_not_rise_for_certain_by_less_than_a_millimetre() {
    let wrap = |mmhg: f64, girth: f64| {
        Part::Wrap(WrapPart { mmhg, per_girth: -mmhg / girth, pull_sd_mmhg: 0.2 * mmhg })
    };
    let marks = vec![
        mark(Landmark::Ankle, 11.0, 36.0, vec![wrap(24.3, 36.0)]),
        mark(Landmark::Calf, 31.0, 35.0, vec![wrap(25.0, 35.0)]),
        mark(Landmark::BelowKnee, 40.0, 36.0, vec![wrap(24.3, 36.0)]),
    ];
    let fall = judge(
        &marks,
        &FallSetting { knits: Vec::new(), ..setting(Limb::Leg, Landmark::BelowKnee, Some(&linear(1.0))) },
    );
    assert_ne!(fall.grade, Grade::Certain, "{fall:?}");
    assert!(!fall.removes);
}

/// Source: derived. For two marks a rise somewhere is the one pair's; for independent blocks far apart it is theirs together.
#[test]
fn two_marks_are_one_pair() {
    let delta = 1.1_f64.ln();
    for (low, high, s, t) in [(3.0, 2.8, 0.1, 0.07), (3.0, 3.2, 0.05, 0.4), (1.0, 4.0, 0.005, 1.0)] {
        let expected = phi((high - low - delta) / f64::hypot(s, t));
        assert!((rise_somewhere(&[(low, s), (high, t)], delta) - expected).abs() < 1e-10);
    }
    let pairs = [(10.0, 0.1), (10.0, 0.2), (0.0, 0.1), (0.1, 0.2)];
    let one = |a: (f64, f64), b: (f64, f64)| phi((b.0 - a.0 - delta) / f64::hypot(a.1, b.1));
    let expected = 1.0 - (1.0 - one(pairs[0], pairs[1])) * (1.0 - one(pairs[2], pairs[3]));
    assert!((rise_somewhere(&pairs, delta) - expected).abs() < 1e-10);
}

/// Source: derived. A common factor of all pressures, in layers or in tension, changes nothing.
#[test]
fn a_common_factor_drops_out() {
    let (single, double) = (linear(3.0), Points(vec![(0.0, 0.0), (3.0, 1548.0)]));
    let marks = arm([12.9, 18.8, 25.0, 29.0]);
    let one = judge(&marks, &setting(Limb::Arm, Landmark::Axilla, Some(&single)));
    let other = judge(&marks, &setting(Limb::Arm, Landmark::Axilla, Some(&double)));
    let (one, other) = (one.chances.unwrap(), other.chances.unwrap());
    assert!((one.chance - other.chance).abs() < 1e-9 && (one.trend_high - other.trend_high).abs() < 1e-9);
}

/// Source: derived. A knit whose tension is a power of the stretch gives by its curve what the ruler gives at
/// that exponent.
#[test]
fn a_power_curve_is_the_ruler_at_its_exponent() {
    for exponent in [0.8, 1.0, 1.3] {
        let curve = power(300.0, exponent, 1.0);
        let marks = arm([12.1, 18.9, 25.7, 30.4]);
        let by_curve = judge(&marks, &setting(Limb::Arm, Landmark::Axilla, Some(&curve))).chances.unwrap();
        let band = Band::around(exponent, 0.0);
        let by_ruler = FallSetting { band, ..setting(Limb::Arm, Landmark::Axilla, None) };
        let by_ruler = judge(&marks, &by_ruler).chances.unwrap();
        // The curve is straight between points 0.25 % of stretch apart.
        assert!((by_curve.chance - by_ruler.chance).abs() < 2e-4, "{by_curve:?} {by_ruler:?}");
    }
}

/// Source: house rule (the grade alone is the grade of the whole judgement), over a grid of garments.
#[test]
fn the_short_way_gives_the_same_grade() {
    let curve = linear(0.62);
    let mut seen = std::collections::BTreeMap::new();
    for a in 0..9 {
        for b in 0..9 {
            for c in 0..5 {
                let step = |base: f64, by: i32| base + f64::from(by) * 0.45;
                let marks = arm([step(11.4, a), step(16.4, b), step(23.4, c), 28.6]);
                for curve in [Some(&curve), None] {
                    let setting = setting(Limb::Arm, Landmark::Axilla, curve);
                    let whole = judge(&marks, &setting).grade;
                    assert_eq!(judge_grade(&marks, &setting), whole);
                    *seen.entry(whole).or_insert(0) += 1;
                }
            }
        }
    }
    assert_eq!(seen.len(), 5, "{seen:?}");
}

/// Source: gradient rule: an undecided fall by ruler names what would decide it, with a chance.
#[test]
fn an_undecided_fall_names_what_would_decide_it() {
    let marks = vec![
        worn(Landmark::Wrist, 0.0, 18.5, 13.0),
        worn(Landmark::Forearm, 14.0, 28.1, 17.1),
        worn(Landmark::UpperArm, 31.0, 33.3, 18.9),
    ];
    let by_ruler = setting(Limb::Arm, Landmark::UpperArm, None);
    let fall = judge(&marks, &by_ruler);
    assert_eq!(fall.grade, Grade::Undecided);
    let found = decide(&marks, &by_ruler, &fall);
    assert!(found.iter().any(|one| one.action == Action::StripPull));
    assert!(found.first().unwrap().chance.is_none_or(|chance| chance >= 0.1));
    let sure = judge(&arm([12.1, 12.9, 22.5, 27.2]), &setting(Limb::Arm, Landmark::Axilla, None));
    assert!(decide(&marks, &by_ruler, &sure).is_empty());
}

/// Source: derived. Two knits worn together: the share of the sum that is felt cancels only where all marks
/// lie under both.
#[test]
fn entering_an_overlap_is_a_rise() {
    let (one, other) = (linear(3.0), power(300.0, 1.2, 1.5));
    let both = |relaxed: f64| vec![knit(0, relaxed), knit(1, relaxed - 1.0)];
    let marks = vec![
        mark(Landmark::Wrist, 0.0, 16.9, vec![knit(0, 12.9)]),
        mark(Landmark::Forearm, 14.0, 25.7, both(19.4)),
        mark(Landmark::UpperArm, 33.0, 32.4, both(25.6)),
    ];
    let mut together = setting(Limb::Arm, Landmark::UpperArm, Some(&one));
    together.knits.push(tapeline::gradient::Knit { curve: Some(&other), tension_sd: 0.08 });
    together.together = true;
    let fall = judge(&marks, &together);
    assert_eq!((fall.grade, fall.place), (Grade::Certain, Some(Landmark::Forearm)));
    assert!(TAPE_SD > 0.0 && fall.removes);
}

/// Source: derived. R = A/(A + c(1 − A)) with c = max(1, n − 2, 9·U/(1 − U)), also where U is above one half.
#[test]
fn the_graded_chance_takes_out_what_happens_by_accident() {
    let mut high = 0;
    for step in [6.0, 12.0, 20.0] {
        let places = [
            Landmark::Wrist,
            Landmark::LowerForearm,
            Landmark::Forearm,
            Landmark::UpperArm,
            Landmark::Axilla,
        ];
        let marks: Vec<FallMark> = places
            .iter()
            .enumerate()
            .map(|(at, landmark)| {
                worn(*landmark, step * at as f64, 16.0 + 2.0 * at as f64, 13.9 + 1.8 * at as f64)
            })
            .collect();
        for many in [3, 4, 5] {
            let to = places[many - 1];
            let chances = judge(&marks[..many], &setting(Limb::Arm, to, Some(&linear(1.0)))).chances.unwrap();
            let (a, u) = (chances.rise_somewhere, chances.usual);
            let c = f64::max(1.0, many as f64 - 2.0).max(9.0 * u / (1.0 - u));
            assert!((chances.chance - a / (a + c * (1.0 - a))).abs() < 1e-12, "{chances:?}");
            high += usize::from(u > 0.6);
        }
    }
    assert!(high >= 3, "{high}");
}

/// Source: gradient rule: a mark left out leaves no fall to speak of, however the others fall.
#[test]
fn a_mark_left_out_is_no_fall() {
    let curve = Points(vec![(0.0, 0.0), (0.6, 20.0)]);
    // The top is stretched a little further than was tested; by ruler it falls.
    let marks = vec![
        worn(Landmark::Wrist, 0.0, 16.9, 10.7),
        worn(Landmark::Forearm, 14.0, 25.7, 16.4),
        worn(Landmark::UpperArm, 33.0, 37.0, 23.0),
    ];
    let fall = judge(&marks, &setting(Limb::Arm, Landmark::UpperArm, Some(&curve)));
    assert_eq!(fall.left_out, vec![Landmark::UpperArm]);
    assert!(fall.grade_of_estimated <= Grade::Undecided && fall.grade <= Grade::Undecided, "{fall:?}");
    assert!(!fall.judged);
}

/// Source: derived. A share of 0.83 that is felt where pieces overlap lowers the logarithm by −ln 0.83.
#[test]
fn a_share_that_is_felt_lowers_the_mark() {
    let curve = linear(3.0);
    let two = || vec![knit(0, 19.8), knit(0, 20.2)];
    let at = |share: f64| {
        let marks = vec![
            worn(Landmark::Wrist, 0.0, 16.9, 12.9),
            FallMark { share, ..mark(Landmark::Forearm, 14.0, 25.7, two()) },
        ];
        judge(&marks, &setting(Limb::Arm, Landmark::Forearm, Some(&curve))).chances.unwrap().any_rise
    };
    // Φ⁻¹ by bisection of Φ.
    let quantile = |chance: f64| {
        let (mut low, mut high) = (-8.0, 8.0);
        for _ in 0..80 {
            let middle = f64::midpoint(low, high);
            if phi(middle) < chance { low = middle } else { high = middle }
        }
        low
    };
    let p = |c: f64, c0: f64| 258.0 * (c / c0 - 1.0) / c;
    let own = |c: f64, all: &[f64]| {
        let sum: f64 = all.iter().map(|c0| p(c, *c0)).sum();
        let tape: f64 = 0.35 * 258.0 * all.len() as f64 / (c * c);
        let ruler: f64 = all.iter().map(|c0| (0.3 * 258.0 / (c0 * c0)).powi(2)).sum();
        tape.hypot(ruler.sqrt()) / sum
    };
    let s = own(16.9, &[12.9]).hypot(own(25.7, &[19.8, 20.2]));
    let full = (p(25.7, 19.8) + p(25.7, 20.2)).ln() - p(16.9, 12.9).ln();
    assert!((quantile(at(1.0)) - full / s).abs() < 1e-6);
    assert!((quantile(at(0.83)) - (full + 0.83_f64.ln()) / s).abs() < 1e-6);
}

/// Source: gradient rule: of pairs alike the lowest proximal mark, then the lowest distal one.
#[test]
fn of_pairs_alike_the_lowest_is_named() {
    let marks = read(&[
        (Landmark::Ankle, 11.0, 20.0),
        (Landmark::LowerCalf, 20.0, 21.0),
        (Landmark::Calf, 31.0, 21.0),
        (Landmark::BelowKnee, 40.0, 21.0),
    ]);
    let fall = judge(&marks, &by_readings(Landmark::BelowKnee));
    assert_eq!((fall.place, fall.against), (Some(Landmark::LowerCalf), Some(Landmark::Ankle)));
}

/// Two unlike knits at the wrist, so that stretch alone is not asked: only the bound tells.
fn two_knits_with_a_short_one<'a>(long: &'a Points, short: &'a Points) -> FallSetting<'a> {
    let mut found = setting(Limb::Arm, Landmark::UpperArm, Some(long));
    found.knits.push(tapeline::gradient::Knit { curve: Some(short), tension_sd: 0.05 });
    found
}

/// Source: derived. The bound K·T_last/C counts all layers, and is held against marks nearer the hand only.
#[test]
fn a_bound_is_held_against_the_marks_below_it() {
    let (long, short) = (linear(3.0), linear(0.3));
    let two = two_knits_with_a_short_one(&long, &short);
    let layered = |layers: f64| match knit(1, 12.0) {
        Part::Knit(part) => Part::Knit(tapeline::gradient::KnitPart { layers, ..part }),
        wrap @ Part::Wrap(_) => wrap,
    };
    let marks = |layers: f64| {
        vec![
            worn(Landmark::Wrist, 0.0, 16.9, 14.4),
            mark(Landmark::Forearm, 14.0, 25.7, vec![layered(layers)]),
            worn(Landmark::UpperArm, 33.0, 32.4, 29.4),
        ]
    };
    // 258·0.3/25.7 = 3.01 against 258·(16.9/14.4 − 1)/16.9 = 2.65 at the wrist: by 14 %, with two layers by 127 %.
    let one = judge(&marks(1.0), &two);
    assert_eq!((one.grade, one.by_bound, one.place), (Grade::Likely, true, Some(Landmark::Forearm)));
    // ln(3.0117/2.6504) less ln 1.1 is 0.0325; the wrist's SD is 0.35·(1/2.5 − 1/16.9) with 0.3·16.9/(14.4·2.5), the
    // bound's 0.35/25.7: 0.1851 together. Φ(0.1755) = 0.5697.
    assert!((one.chance.unwrap() - 0.5697).abs() < 5e-4, "{one:?}");
    let both = judge(&marks(2.0), &two);
    assert_eq!((both.grade, both.by_bound, both.against), (Grade::Certain, true, Some(Landmark::Wrist)));
    assert_eq!(judge_grade(&marks(2.0), &two), Grade::Certain);
    // Beyond the curve at the wrist, with less nearer the trunk: no bound speaks.
    let first = vec![
        mark(Landmark::Wrist, 0.0, 16.9, vec![layered(2.0)]),
        worn(Landmark::Forearm, 14.0, 25.7, 21.9),
        worn(Landmark::UpperArm, 33.0, 32.4, 29.4),
    ];
    let falls = judge(&first, &two);
    assert!(!falls.by_bound && falls.grade == Grade::Undecided, "{falls:?}");
}

/// Source: gradient rule: a clearly slack mark below one with clear contact is a rise, not worn together, and
/// not below one that hardly touches.
#[test]
fn slack_below_clear_contact_is_a_rise() {
    let curve = linear(3.0);
    let at = |forearm: f64, together: bool| {
        let marks = vec![
            worn(Landmark::Wrist, 0.0, 16.9, 18.2),
            worn(Landmark::Forearm, 14.0, 25.7, forearm),
            worn(Landmark::UpperArm, 33.0, 32.4, 32.3),
        ];
        let setting = FallSetting { together, ..setting(Limb::Arm, Landmark::UpperArm, Some(&curve)) };
        judge(&marks, &setting).chances.unwrap().rise_somewhere
    };
    assert!((at(19.4, false) - 1.0).abs() < 1e-15);
    assert!(at(19.4, true) < 1.0);
    assert!(at(25.5, false) < 1.0);
}

/// Source: gradient.md section 3: a certain rise takes a size out where some pressure exceeds the lowest more distal
/// one by 3 mmHg; a mark that nothing touches presses nothing, not what half its error would (derived: 3.6 mmHg
/// above nothing, 2.7 above the 0.9 that counts for the chances).
#[test]
fn above_a_slack_mark_the_whole_pressure_counts() {
    let curve = Points(vec![(0.0, 0.0), (1.0, 300.0)]);
    let at = |forearm: f64| {
        let marks = vec![
            worn(Landmark::Wrist, 0.0, 20.0, 21.2),
            worn(Landmark::Forearm, 14.0, 26.0, forearm),
            worn(Landmark::UpperArm, 33.0, 31.0, 30.2),
        ];
        judge(&marks, &setting(Limb::Arm, Landmark::UpperArm, Some(&curve)))
    };
    let k = 4.71277587283339;
    let presses = |relaxed: f64| k * 300.0 * (26.0 / relaxed - 1.0) / 26.0;
    assert!((3.3..3.8).contains(&presses(24.4)), "{}", presses(24.4));
    let fall = at(24.4);
    assert_eq!((fall.grade, fall.removes), (Grade::Certain, true), "{fall:?}");
    // Just short of it: 2.9 mmHg above nothing.
    assert!((2.7..3.0).contains(&presses(24.68)), "{}", presses(24.68));
    let fall = at(24.68);
    assert_eq!((fall.grade, fall.removes), (Grade::Certain, false), "{fall:?}");
}

/// Source: gradient rule: the joint, hand and foot are not judged.
#[test]
fn the_joint_is_not_judged() {
    let curve = linear(3.0);
    let mut marks = arm([12.1, 18.9, 25.7, 30.4]);
    let without = judge(&marks, &setting(Limb::Arm, Landmark::Axilla, Some(&curve)));
    marks.insert(2, worn(Landmark::Elbow, 23.0, 27.6, 13.0));
    marks.insert(0, worn(Landmark::Hand, -8.0, 19.5, 30.0));
    let with = judge(&marks, &setting(Limb::Arm, Landmark::Axilla, Some(&curve)));
    assert_eq!(format!("{:?}", with.chances), format!("{:?}", without.chances));
}

/// Source: gradient rule, section 4: a cheaper measurement within 0.1 of the most likely goes first; below 0.2
/// sensor readings are named.
#[test]
fn a_cheaper_measurement_goes_first() {
    let curve = power(258.0, 1.0, 1.2);
    let ruler = setting(Limb::Arm, Landmark::UpperArm, None);
    let strip = FallSetting { band: Band::around(1.0, 0.1), ..ruler.clone() };
    let settings = [ruler, strip, setting(Limb::Arm, Landmark::UpperArm, Some(&curve))];
    let mut seen = [0; 3];
    for wrist in 0..12 {
        for top in 0..12 {
            let marks = vec![
                worn(Landmark::Wrist, 0.0, 18.5, 12.6 + 0.1 * f64::from(wrist)),
                worn(Landmark::Forearm, 14.0, 28.1, 18.6),
                worn(Landmark::UpperArm, 31.0, 33.3, 18.9 + 0.2 * f64::from(top)),
            ];
            let mut marks = marks;
            for mark in &mut marks {
                mark.girth_sd_cm = if top % 2 == 0 { TAPE_SD } else { 0.6 };
            }
            let asked = &settings[usize::try_from(wrist % 3).unwrap()];
            let found = decide(&marks, asked, &judge(&marks, asked));
            let Some(first) = found.first() else { continue };
            let most = found.iter().filter_map(|one| one.chance).fold(0.0, f64::max);
            let Some(chance) = first.chance else {
                assert!(first.action == Action::SensorReadings && most < 0.2);
                seen[0] += 1;
                continue;
            };
            assert!(most >= 0.2 && chance >= most - 0.1);
            let cheapest =
                found.iter().filter(|one| one.chance.unwrap() >= most - 0.1).map(|one| one.action).min();
            assert_eq!(Some(first.action), cheapest);
            seen[if chance < most { 1 } else { 2 }] += 1;
        }
    }
    assert!(seen.iter().all(|count| *count > 0), "{seen:?}");
}

/// Source: gradient.md section 3: a trend of exactly a half is no rise; the short way agrees.
#[test]
fn a_level_trend_is_not_decided_by_the_short_way_either() {
    let level = read(&[
        (Landmark::Wrist, 20.0, 2.5),
        (Landmark::Forearm, 20.0, 2.5),
        (Landmark::UpperArm, 20.0, 2.5),
    ]);
    let setting = by_readings(Landmark::UpperArm);
    let fall = judge(&level, &setting);
    assert_eq!((fall.chances.unwrap().trend_low, fall.grade), (0.5, Grade::Undecided));
    assert_eq!(judge_grade(&level, &setting), Grade::Undecided);
}

/// Source: derived: a rise from mark to mark has (s_1·P_1)² + (s_2·P_2)² + (t·rise)² of variance, one knit; its ln
/// slopes are written out here.
#[test]
fn the_figures_of_a_pair_are_the_derived_ones() {
    let (k, stiff) = (4.71277587283339, 300.0);
    let curve = Points(vec![(0.0, 0.0), (2.0, 2.0 * stiff)]);
    let marks = vec![worn(Landmark::Wrist, 0.0, 17.0, 12.5), worn(Landmark::Forearm, 14.0, 26.0, 20.0)];
    let fall = judge(&marks, &setting(Limb::Arm, Landmark::Forearm, Some(&curve)));
    let one = |c: f64, c0: f64| {
        let p = k * stiff * (c / c0 - 1.0) / c;
        // P = K·k·(1/C0 − 1/C).
        let sd = f64::hypot(0.35 * k * stiff / (c * c), 0.3 * k * stiff / (c0 * c0));
        (p, sd)
    };
    let (below, above) = (one(17.0, 12.5), one(26.0, 20.0));
    let rise = above.0 - below.0;
    let pair = fall.pairs[0];
    let sd = (below.1.powi(2) + above.1.powi(2) + (0.05 * rise).powi(2)).sqrt();
    assert!((pair.rise_mmhg.unwrap() - rise).abs() < 1e-9);
    assert!((pair.sd_mmhg.unwrap() - sd).abs() < 1e-9, "{} {sd}", pair.sd_mmhg.unwrap());
}

/// Source: gradient.md section 4: the chance that a strip pull decides is the weight of the exponents, five Gauss-
/// Legendre nodes over the band (printed by NumPy), whose pulled band is decided; of a curve the same without width.
#[test]
fn the_chance_that_a_strip_pull_decides_is_that_of_its_nodes() {
    const NODES: [(f64, f64); 5] = [
        (-0.906179845938664, 0.11846344252809465),
        (-0.5384693101056831, 0.23931433524968324),
        (0.0, 0.2844444444444444),
        (0.5384693101056831, 0.23931433524968324),
        (0.906179845938664, 0.11846344252809465),
    ];
    let mut kinds = std::collections::BTreeSet::new();
    for top in 0..60 {
        let marks = arm([12.6, 17.3, 20.6 + 0.02 * f64::from(top), 22.2 + 0.05 * f64::from(top)]);
        let open = setting(Limb::Arm, Landmark::Axilla, None);
        let fall = judge(&marks, &open);
        if fall.grade != Grade::Undecided {
            continue;
        }
        let all = decide(&marks, &open, &fall);
        for (action, half) in [(Action::StripPull, 0.1), (Action::Curve, 0.0)] {
            let decided = |exponent: f64| {
                let band = Band::around(exponent, half);
                judge_grade(&marks, &FallSetting { band, ..open.clone() }) != Grade::Undecided
            };
            let wanted: f64 =
                NODES.iter().filter(|(place, _)| decided(1.1 + 0.4 * place)).map(|(_, weight)| weight).sum();
            let is = all.iter().find(|one| one.action == action).unwrap().chance.unwrap();
            assert!((is - wanted).abs() < 1e-9, "{top} {action:?}: {is} {wanted}");
            kinds.insert((1e6 * wanted).round() as i64);
        }
    }
    assert!(kinds.len() > 3, "{kinds:?}");
}

/// Nine nodes of a standard normal value with their weights (printed by `NumPy`, `hermegauss`).
const NORMAL_9: [(f64, f64); 9] = [
    (-4.512_745_863_399_783, 2.234_584_400_774_660_7e-5),
    (-3.205_429_002_856_47, 0.002_789_141_321_231_769_2),
    (-2.076_847_978_677_83, 0.049_916_406_765_217_82),
    (-1.023_255_663_789_132_6, 0.244_097_502_894_939_53),
    (0.0, 0.406_349_206_349_206_35),
    (1.023_255_663_789_132_6, 0.244_097_502_894_939_53),
    (2.076_847_978_677_83, 0.049_916_406_765_217_82),
    (3.205_429_002_856_47, 0.002_789_141_321_231_769_2),
    (4.512_745_863_399_783, 2.234_584_400_774_660_7e-5),
];

/// Source: gradient.md section 4, worked out here: one girth, or one flat width of one piece, is measured again, and
/// whatever rests on it changes together: the mark, and the point just beyond an edge at its landmark.
#[test]
fn a_point_beyond_an_edge_shares_the_measurement_of_its_mark() {
    let curve = linear(3.0);
    let part = |piece: usize, relaxed: f64| match knit(0, relaxed) {
        Part::Knit(part) => Part::Knit(tapeline::gradient::KnitPart { piece, ..part }),
        wrap @ Part::Wrap(_) => wrap,
    };
    let (mut held, mut apart) = (0, 0);
    for tenths in 0..60_u32 {
        let upper = 20.0 + f64::from(tenths) / 20.0;
        let marks = vec![
            mark(Landmark::Wrist, 0.0, 16.9, vec![part(0, 14.0), part(1, 15.2)]),
            mark(Landmark::Forearm, 14.0, 25.7, vec![part(0, 19.2), part(1, 21.5)]),
            mark(Landmark::Forearm, 14.01, 25.7, vec![part(0, 19.2)]),
            worn(Landmark::UpperArm, 33.0, 32.4, upper),
        ];
        let setting = FallSetting { together: true, ..setting(Limb::Arm, Landmark::UpperArm, Some(&curve)) };
        let fall = judge(&marks, &setting);
        if fall.grade != Grade::Undecided {
            continue;
        }
        let all = decide(&marks, &setting, &fall);
        let over = |change: &dyn Fn(&mut FallMark, f64)| -> f64 {
            let decided = |z: f64| {
                let mut marks = marks.clone();
                marks
                    .iter_mut()
                    .filter(|one| one.landmark == Landmark::Forearm)
                    .for_each(|one| change(one, z));
                judge(&marks, &setting).grade != Grade::Undecided
            };
            NORMAL_9.iter().filter(|(z, _)| decided(*z)).map(|(_, weight)| weight).sum()
        };
        // One more of one: the mean moves by SD/√2, its SD is that too.
        let half = std::f64::consts::FRAC_1_SQRT_2;
        let tape = over(&|one, z| {
            one.girth_cm += z * 0.35 * half;
            one.girth_sd_cm = 0.35 * half;
        });
        let flat = |piece: usize| {
            over(&|one, z| {
                let MarkKind::Worn(parts) = &mut one.what else { return };
                for part in parts {
                    if let Part::Knit(part) = part
                        && part.piece == piece
                    {
                        part.relaxed_cm += z * 0.3 * half;
                        part.relaxed_sd_cm = 0.3 * half;
                    }
                }
            })
        };
        let said = |action: Action, piece: Option<usize>| {
            let own = |one: &&tapeline::gradient::Decide| {
                (one.action, one.landmark, one.piece) == (action, Some(Landmark::Forearm), piece)
            };
            let found: Vec<f64> = all.iter().filter(own).filter_map(|one| one.chance).collect();
            assert_eq!(found.len(), 1, "{all:?}");
            found[0]
        };
        for (wanted, found) in [
            (tape, said(Action::Tape, None)),
            (flat(0), said(Action::FlatWidth, Some(0))),
            (flat(1), said(Action::FlatWidth, Some(1))),
        ] {
            assert!((wanted - found).abs() < 1e-9, "{wanted} {found}");
            held += 1;
        }
        apart += usize::from((flat(0) - flat(1)).abs() > 0.01);
    }
    assert!(held > 6 && apart > 0, "{held} {apart}");
}
