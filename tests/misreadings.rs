//! Questions and misreadings: each rule at its edges, on records made here.

use tapeline::anatomy::{Landmark, Limb, Side};
use tapeline::input::Named;
use tapeline::quantity::Position;
use tapeline::record::{
    Affected, AgeBand, Confirmable, Index, LengthName, Mark, MisreadingKind, Question, QuestionKind, Record,
    Unusual, falls, questions,
};

use tapeline::rules::NumberId;

use crate::made::{day, girth, mark, record, rules, spot, text};

use Landmark::{
    Ankle, Axilla, BelowKnee, Calf, Elbow, Forearm, Forefoot, Hand, Instep, Knee, LowerCalf, LowerForearm,
    MidThigh, ThumbWeb, UpperArm, UpperThigh, Wrist,
};

fn marks(all: &[(Landmark, f64, f64)]) -> Vec<Mark> {
    all.iter().map(|(landmark, at, cm)| mark(Some(*landmark), *at, *cm)).collect()
}

/// An arm at the mean of the published limbs, but for its girths.
// Source: means of log girth of 507 adults (Heinz et al. 2003, J Stat Educ 11(2)):
// exp(2.7750), exp(3.2500), exp(3.4302) = 16.04, 25.79, 30.88 cm.
fn arm(wrist: f64, forearm: f64, upper_arm: f64) -> Record {
    let all = marks(&[(Wrist, 0.0, wrist), (Forearm, 14.0, forearm), (UpperArm, 33.0, upper_arm)]);
    record("2026-03-14", Limb::Arm, all, None)
}

fn leg(ankle: f64, calf: f64, knee: f64, thigh: f64) -> Record {
    let all = marks(&[(Ankle, 11.0, ankle), (Calf, 31.0, calf), (Knee, 46.0, knee), (MidThigh, 59.0, thigh)]);
    record("2026-03-14", Limb::Leg, all, None)
}

fn ask(record: &Record) -> Vec<Question> {
    questions(record, &[], &rules())
}

fn confirm(record: &mut Record, word: &str) {
    record.confirmed.push(Named { text: word.to_owned(), spot: spot() });
}

#[track_caller]
fn first(record: &Record) -> MisreadingKind {
    let asked = ask(record);
    assert_eq!(asked.len(), 1, "{asked:?}");
    asked[0].misreadings()[0].kind
}

fn words(record: &Record) -> Vec<&'static str> {
    ask(record).iter().flat_map(Question::words).map(Confirmable::word).collect()
}

#[test]
fn the_usual_misreadings_come_first() {
    assert!(ask(&arm(16.0, 25.8, 30.9)).is_empty());
    assert_eq!(first(&arm(160.0, 25.8, 30.9)), MisreadingKind::Point);
    assert_eq!(first(&arm(25.8, 16.0, 30.9)), MisreadingKind::Exchanged);
    // Source: 1 inch = 2.54 cm by definition; the usual arm in inches; girth = π × diameter.
    assert_eq!(first(&arm(6.3, 10.15, 12.16)), MisreadingKind::Inches);
    assert_eq!(first(&arm(5.1, 8.2, 9.8)), MisreadingKind::Diameters);
    assert_eq!(first(&leg(57.0, 38.0, 37.0, 22.0)), MisreadingKind::Reversed);
    // 6 cm: 16 cm lies 0.03 in log girth from the mean 16.04 cm, the inches 15.24 cm lie 0.05 from it.
    assert_eq!(first(&arm(6.0, 25.8, 30.9)), MisreadingKind::LostDigit);
}

#[test]
fn at_most_four_are_named() {
    for typed in [arm(6.0, 25.8, 30.9), arm(16.0, 2.5, 30.9), leg(22.0, 3.6, 37.0, 57.0)] {
        assert!(ask(&typed)[0].misreadings().len() <= 4);
    }
}

#[test]
fn a_band_ends_where_it_says() {
    assert!(ask(&arm(30.0, 40.0, 45.0)).is_empty());
    assert_eq!(words(&arm(30.01, 40.0, 45.0)), ["wrist"]);
    assert!(ask(&arm(11.0, 16.0, 18.0)).is_empty());
    assert_eq!(words(&arm(10.99, 16.0, 18.0)), ["wrist"]);
}

#[test]
fn a_confirmed_girth_is_asked_about_no_more() {
    let mut held = arm(31.0, 40.0, 45.0);
    assert_eq!(words(&held), ["wrist"]);
    // The letter of the standards serves as well.
    confirm(&mut held, "C");
    assert!(ask(&held).is_empty());
}

#[test]
fn a_child_is_held_against_no_adult_band() {
    let mut child = arm(9.0, 12.0, 13.0);
    assert!(!ask(&child).is_empty());
    child.age_band = AgeBand::Child;
    assert!(ask(&child).is_empty());
    let mut large = arm(9.0, 12.0, 1300.0);
    large.age_band = AgeBand::Child;
    assert_eq!(words(&large), ["upper-arm"]);
}

// Regression: girths above 200 cm were refused before a misreading could be named.
#[test]
fn above_two_hundred_centimetres_is_asked_with_its_misreading() {
    let typed = leg(22.0, 36.0, 37.0, 570.0);
    let asked = ask(&typed);
    let QuestionKind::Unusual { unusual, misreadings } = &asked[0].kind else { panic!("{asked:?}") };
    assert!(matches!(unusual[0], Unusual::Large { .. }), "{unusual:?}");
    assert_eq!(misreadings[0].kind, MisreadingKind::Point);
    assert!((misreadings[0].instead[0].1.cm() - 57.0).abs() < 1e-9);
    // 169 mm written under `cm` without its point.
    assert_eq!(first(&arm(1690.0, 25.8, 30.9)), MisreadingKind::Point);
    // Every girth in millimetres under `cm`.
    let all = ask(&leg(220.0, 360.0, 370.0, 570.0));
    assert!(all[0].misreadings()[0].whole_limb);
}

/// A whole arm and leg.
// Source: invented limbs of ordinary shape.
fn whole_arm() -> Vec<(Landmark, f64, f64)> {
    vec![
        (Hand, -8.0, 19.5),
        (ThumbWeb, -6.0, 21.5),
        (Wrist, 0.0, 16.4),
        (LowerForearm, 6.0, 20.0),
        (Forearm, 14.0, 25.8),
        (Elbow, 23.0, 26.0),
        (UpperArm, 33.0, 30.5),
        (Axilla, 42.0, 34.0),
    ]
}

fn whole_leg() -> Vec<(Landmark, f64, f64)> {
    vec![
        (Forefoot, 2.0, 23.5),
        (Instep, 6.0, 32.5),
        (Ankle, 11.0, 22.5),
        (LowerCalf, 20.0, 27.5),
        (Calf, 31.0, 37.0),
        (BelowKnee, 39.0, 34.5),
        (Knee, 46.0, 37.5),
        (MidThigh, 59.0, 52.0),
        (UpperThigh, 71.0, 59.0),
    ]
}

// Regression: hand 182 cm and axilla 3.7 cm passed.
#[test]
fn every_landmark_is_asked_about() {
    for (limb, whole) in [(Limb::Arm, whole_arm()), (Limb::Leg, whole_leg())] {
        let of = |all: &[(Landmark, f64, f64)]| record("2026-03-14", limb, marks(all), None);
        assert!(ask(&of(&whole)).is_empty(), "{:?}", ask(&of(&whole)));
        for place in 0..whole.len() {
            let landmark = whole[place].0.name();
            for factor in [10.0, 0.1, 2.54, 1.0 / 2.54] {
                let mut typed = whole.clone();
                typed[place].2 *= factor;
                let asked = ask(&of(&typed));
                let named = asked.iter().flat_map(Question::landmarks).any(|one| one == whole[place].0);
                assert!(named, "{landmark} x {factor}: {asked:?}");
                let true_one = asked.iter().flat_map(Question::misreadings).any(|one| {
                    one.instead.iter().all(|(place_of, girth)| {
                        place_of.landmark == Some(whole[place].0) && (girth.cm() - whole[place].2).abs() < 0.2
                    })
                });
                assert!(true_one, "{landmark} x {factor}: {asked:?}");
            }
            // Without its neighbours a mark is still held against what is there.
            let alone: Vec<_> = whole
                .iter()
                .enumerate()
                .filter(|(at, _)| *at == place || at % 3 == 2)
                .map(|(_, one)| *one)
                .collect();
            assert!(ask(&of(&alone)).is_empty(), "{landmark}: {:?}", ask(&of(&alone)));
        }
    }
}

#[test]
fn a_swollen_hand_or_foot_is_no_misreading() {
    // Hand and foot with half as much girth again on a limb as it is.
    let mut arm = whole_arm();
    let mut leg = whole_leg();
    for place in 0..2 {
        arm[place].2 *= 1.5;
        leg[place].2 *= 1.5;
    }
    assert!(ask(&record("2026-03-14", Limb::Arm, marks(&arm), None)).is_empty());
    assert!(ask(&record("2026-03-14", Limb::Leg, marks(&leg), None)).is_empty());
}

#[test]
fn serial_marks_are_held_against_their_neighbours() {
    let serial = |girths: &[f64]| {
        let all = girths.iter().enumerate().map(|(at, cm)| mark(None, at as f64 * 4.0, *cm)).collect();
        record("2026-03-14", Limb::Arm, all, None)
    };
    assert!(ask(&serial(&[16.0, 18.0, 21.0, 25.0, 26.0])).is_empty());
    let asked = ask(&serial(&[16.0, 18.0, 42.1, 25.0, 26.0]));
    assert_eq!(asked.len(), 1);
    // Nothing in `confirmed` names a serial mark; repeats that agree answer for it.
    assert!(asked[0].words().is_empty());
    let mut again = serial(&[16.0, 18.0, 42.1, 25.0, 26.0]);
    again.limbs[0].marks[2].again = vec![girth(42.3)];
    assert!(ask(&again).is_empty());
}

#[test]
fn repeats_far_apart_are_asked_about() {
    // Source: house rule: a gap above 0.5 cm is a caution, above 2 cm a question.
    let with = |again: f64| {
        let mut typed = arm(16.0, 25.8, 30.9);
        typed.limbs[0].marks[1].again = vec![girth(again)];
        typed
    };
    for (again, wide, asked) in
        [(26.3, false, false), (26.31, true, false), (27.8, true, false), (27.81, true, true)]
    {
        let typed = with(again);
        assert_eq!(typed.limbs[0].marks[1].is_gap_above(0.5), wide, "{again}");
        let found = ask(&typed);
        assert_eq!(!found.is_empty(), asked, "{again}");
    }
    // Regression: 11.4 and 40 averaged to 25.7 passed.
    let mut typed = arm(16.0, 11.4, 30.9);
    typed.limbs[0].marks[1].again = vec![girth(40.0)];
    let found = ask(&typed);
    assert_eq!(found.len(), 1);
    assert!(matches!(found[0].kind, QuestionKind::Repeats { .. }), "{found:?}");
    confirm(&mut typed, "forearm");
    assert!(ask(&typed).is_empty());
}

#[test]
fn exchanged_sides_are_asked_about() {
    // Source: mean of ln(affected / other) below −0.04; exp(−0.04) = 0.960789.
    let other = |factor: f64| {
        let all = marks(&[
            (Wrist, 0.0, 20.0 * factor),
            (Forearm, 14.0, 30.0 * factor),
            (UpperArm, 33.0, 40.0 * factor),
        ]);
        let own = marks(&[(Wrist, 0.0, 20.0), (Forearm, 14.0, 30.0), (UpperArm, 33.0, 40.0)]);
        record("2026-03-14", Limb::Arm, own, Some(all))
    };
    assert!(ask(&other(1.04)).is_empty());
    let mut asked = other(1.045);
    assert_eq!(words(&asked), ["thinner"]);
    confirm(&mut asked, "thinner");
    assert!(ask(&asked).is_empty());
    let mut both = other(1.2);
    both.affected = Affected::Both;
    assert!(ask(&both).is_empty());
}

#[test]
fn a_limb_that_is_not_affected_is_asked_about() {
    // Regression: `affected: right` on `limb: left arm` passed.
    let mut typed = arm(16.0, 25.8, 30.9);
    for affected in [Affected::One(Side::Right), Affected::Neither] {
        typed.affected = affected;
        assert_eq!(words(&typed), ["affected"]);
    }
    confirm(&mut typed, "affected");
    assert!(ask(&typed).is_empty());
}

#[test]
fn a_length_against_the_positions() {
    // Regression: a length of 42 cm beside marks 21 or 60 cm apart passed.
    let mut typed = arm(16.0, 25.8, 30.9);
    let name = LengthName::parse(Limb::Arm, "wrist to upper-arm").unwrap();
    let state = |cm: f64, typed: &mut Record| {
        let span = tapeline::quantity::Span::from_tenths((cm * 100.0) as i64).unwrap();
        typed.limbs[0].lengths.insert(name, (span, spot()));
    };
    // The positions give 33 cm; 1 cm is taken, a tenth of a millimetre more is asked about.
    for (cm, asked) in [(34.0, false), (34.01, true), (32.0, false), (31.99, true)] {
        state(cm, &mut typed);
        assert_eq!(words(&typed) == ["lengths"], asked, "{cm}");
    }
    confirm(&mut typed, "lengths");
    assert!(ask(&typed).is_empty());
}

#[test]
fn a_length_from_the_floor_needs_positions_from_the_floor() {
    let mut typed = leg(22.0, 36.0, 37.0, 57.0);
    let name = LengthName::parse(Limb::Leg, "floor to knee").unwrap();
    assert_eq!(name.name(), "floor to knee");
    let from = |typed: &Record| typed.limbs[0].length(name, typed.positions_from).map(|(span, _)| span.cm());
    assert_eq!(from(&typed), Some(46.0));
    typed.positions_from = tapeline::record::Origin::Heel;
    assert_eq!(from(&typed), None);
    assert!(LengthName::parse(Limb::Arm, "floor to wrist").is_none());
}

#[test]
fn marks_of_both_limbs_at_other_positions() {
    let other = |at: f64| {
        let own = marks(&[(Wrist, 0.0, 16.0), (Forearm, 14.0, 25.8)]);
        record("2026-03-14", Limb::Arm, own, Some(marks(&[(Wrist, 0.0, 16.0), (Forearm, at, 25.8)])))
    };
    assert!(ask(&other(16.0)).is_empty());
    let mut asked = other(16.01);
    assert_eq!(words(&asked), ["positions"]);
    confirm(&mut asked, "positions");
    assert!(ask(&asked).is_empty());
}

#[test]
fn a_label_that_looks_like_a_name() {
    for (label, asked) in [
        ("L-0417", false),
        ("K0417", false),
        ("AB", false),
        ("417", false),
        ("Anna Example", true),
        ("Example, Anna", true),
        ("Anna", true),
    ] {
        let mut typed = arm(16.0, 25.8, 30.9);
        typed.client = text(label);
        assert_eq!(words(&typed) == ["client"], asked, "{label}");
        confirm(&mut typed, "client");
        assert!(ask(&typed).is_empty(), "{label}");
    }
}

#[test]
fn a_stated_index_against_its_pressures() {
    // 124 mmHg over 100 mmHg is 1.24 (derived); 0.15 apart is taken.
    let mut typed = leg(22.0, 36.0, 37.0, 57.0);
    for (stated, asked) in [(1.24, false), (1.09, false), (1.08, true), (1.39, false), (1.40, true)] {
        typed.limbs[0].arterial = Some(tapeline::record::Arterial {
            taken_on: Some(day("2026-03-10")),
            abpi: Some(Index::Value(stated)),
            ankle_systolic: Some(tapeline::quantity::pressure_from_mmhg(124.0)),
            brachial_systolic: Some(tapeline::quantity::pressure_from_mmhg(100.0)),
            toe: None,
            toe_brachial: None,
            tcpo2: None,
            clinical: None,
            clinical_by: None,
            clinical_found: None,
            cap: None,
            spot: spot(),
        });
        assert_eq!(words(&typed) == ["arterial"], asked, "{stated}");
    }
}

/// The arm a month earlier.
fn then(wrist: f64, forearm: f64, upper_arm: f64) -> Record {
    let mut then = arm(wrist, forearm, upper_arm);
    then.measured_on = day("2026-02-14");
    then
}

#[test]
fn one_mark_that_moved_alone_since_the_last_visit() {
    let before = then(16.0, 25.8, 30.9);
    let now = |wrist, forearm, upper_arm| {
        let now = arm(wrist, forearm, upper_arm);
        questions(&now, &[&before], &rules())
    };
    assert!(now(16.0, 25.8, 30.9).is_empty());
    // All marks 8 % larger: the limb has grown, no girth is misread.
    assert!(now(17.3, 27.9, 33.4).is_empty());
    let asked = now(16.0, 28.8, 30.9);
    assert_eq!(asked.len(), 1, "{asked:?}");
    let QuestionKind::SinceVisit { moved, misreadings } = &asked[0].kind else { panic!("{asked:?}") };
    assert_eq!(moved[0].place.landmark, Some(Forearm));
    // Source: the rule by hand: ln(28.8/25.8) = 0.110001; tape 0.35 cm at both, 1.5 %: SD of the mark
    // √((0.35/25.8)² + (0.35/28.8)² + 0.015²) = 0.023592, wrist √(2·(0.35/16)² + 0.015²) = 0.034385, upper arm
    // √(2·(0.35/30.9)² + 0.015²) = 0.021929; 0.110001 / √(0.023592² + (0.034385² + 0.021929²)/4) = 3.5266.
    assert!((moved[0].away_sd - 3.5266).abs() < 1e-3, "{}", moved[0].away_sd);
    assert!(misreadings.iter().any(|one| one.kind == MisreadingKind::OtherDigit));
    let mut held = arm(16.0, 28.8, 30.9);
    confirm(&mut held, "forearm");
    assert!(questions(&held, &[&before], &rules()).is_empty());
}

#[test]
fn the_last_of_the_earlier_visits_counts() {
    let (mut old, before) = (then(16.0, 22.0, 30.9), then(16.0, 25.8, 30.9));
    old.measured_on = day("2025-11-14");
    let now = arm(16.0, 25.8, 30.9);
    assert!(questions(&now, &[&old, &before], &rules()).is_empty());
}

#[test]
fn a_fall_toward_the_trunk_names_the_exchange() {
    let of = |record: &Record| falls(record, &record.limbs[0], &rules());
    assert!(of(&arm(16.0, 25.8, 30.9)).is_empty());
    let fell = of(&arm(16.0, 30.9, 25.8));
    assert_eq!(fell.len(), 1);
    assert!(fell[0].is_exchange);
    assert_eq!(fell[0].by_tenths, 510);
    // A forearm that is swollen against the other arm is no exchange.
    let mut swollen = arm(16.0, 30.9, 25.8);
    swollen.limbs[0].other_limb =
        Some(marks(&[(Wrist, 0.0, 16.0), (Forearm, 14.0, 25.0), (UpperArm, 33.0, 25.4)]));
    assert!(!of(&swollen)[0].is_exchange);
    // Knee and below-knee are exempt: knee exceeds calf in 54 % of healthy legs (bdims).
    let all = whole_leg();
    assert!(of(&record("2026-03-14", Limb::Leg, marks(&all), None)).is_empty());
}

#[test]
fn the_other_limb_is_asked_about_as_well() {
    let mut typed = arm(16.0, 25.8, 30.9);
    typed.limbs[0].other_limb =
        Some(marks(&[(Wrist, 0.0, 160.0), (Forearm, 14.0, 25.0), (UpperArm, 33.0, 30.0)]));
    let asked = ask(&typed);
    assert_eq!(asked.len(), 1, "{asked:?}");
    assert!(asked[0].of_other);
    assert_eq!(asked[0].side, Some(Side::Right));
    assert_eq!(Position::from_tenths(0), asked[0].places().first().map(|one| one.at));
}

#[test]
fn the_numbers_are_those_of_the_rules() {
    let mut own = rules();
    let mut set = |id, value| own.numbers.iter_mut().find(|one| one.id == id).unwrap().value = value;
    // The affected arm is thinner by 4.3 %, ln 1.045 = 0.0440; the wrist's repeats lie 1 cm apart.
    let other = marks(&[(Wrist, 0.0, 20.9), (Forearm, 14.0, 31.35), (UpperArm, 33.0, 41.8)]);
    let mine = marks(&[(Wrist, 0.0, 20.0), (Forearm, 14.0, 30.0), (UpperArm, 33.0, 40.0)]);
    let mut typed = record("2026-03-14", Limb::Arm, mine, Some(other));
    assert_eq!(words(&typed), ["thinner"]);
    set(NumberId::ThinnerSide, 0.05);
    assert!(questions(&typed, &[], &own).is_empty());
    typed.limbs[0].marks[0].again = vec![girth(21.0)];
    let mut set = |id, value| own.numbers.iter_mut().find(|one| one.id == id).unwrap().value = value;
    set(NumberId::RepeatLimit, 0.9);
    let asked = questions(&typed, &[], &own);
    assert!(matches!(asked[0].kind, QuestionKind::Repeats { .. }), "{asked:?}");
}
