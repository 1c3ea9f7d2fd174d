//! The inverse: a garment for a wanted pressure, read back.

use tapeline::anatomy::{Landmark, Limb};
use tapeline::estimate::{NoPattern, OnLimb, Target, Wanted, WantedFall, pattern};
use tapeline::garment::{Claim, Fabric};
use tapeline::gradient::Grade;
use tapeline::pressure::{Spread, estimate_cm};
use tapeline::quantity::mmhg;
use tapeline::record::Mark;
use tapeline::rules::TapeSd;

use crate::made::{self, near};
use crate::worn_support::{arm, claim, leg, linear, marks, rules};

use Landmark::{
    Ankle, Axilla, BelowKnee, Calf, Forearm, LowerCalf, LowerForearm, MidThigh, UpperArm, UpperThigh, Wrist,
};

fn wanted(fabric: Fabric, target: Target, claim: Option<Claim>) -> Wanted {
    Wanted { label: made::text("made"), fabric, layers: 1, claim, style: None, target, to: None }
}

/// Source: physics check values 10 and 11 (derived): 20 mmHg, C 25, k 400 gives C0 19.7591523367; 25 mmHg,
/// C 23, k 500 gives 18.4884852204.
#[test]
fn the_relaxed_girth_is_that_of_the_closed_form() {
    for (mmhg, girth, k, relaxed, stretch) in [
        (20.0, 25.0, 400.0, 19.7591523367, 0.265236462274),
        (25.0, 23.0, 500.0, 18.4884852204, 0.244017545292),
    ] {
        let limb = marks(&[(Ankle, 11.0, girth), (Calf, 31.0, girth)]);
        let list = Target::List(vec![(Ankle, mmhg), (Calf, 0.6 * mmhg)]);
        let found = pattern(
            &OnLimb { limb: Limb::Leg, marks: &limb },
            &wanted(linear("knit", k, 60.0), list, None),
            &rules(),
        )
        .unwrap();
        near(found.marks[0].exact_cm.unwrap(), relaxed, 1e-10);
        near(found.marks[0].stretch.unwrap(), stretch, 1e-10);
    }
}

/// Source: derived: the garment worked out presses what was wanted, but for the raster of 0.1 mm.
#[test]
fn what_is_made_reads_back() {
    let limb = arm();
    let asked = wanted(linear("knit", 320.0, 120.0), Target::Reference(25.0, WantedFall::To(55.0)), None);
    let found = pattern(&OnLimb { limb: Limb::Arm, marks: &limb }, &asked, &rules()).unwrap();
    let read = found.estimated.as_ref().unwrap();
    assert_eq!(read.grade(), Some(Grade::None), "{:?}", read.fall);
    for mark in &found.marks {
        let back = read.marks.iter().find(|one| one.landmark == mark.landmark).unwrap();
        // Half of 0.1 mm in the relaxed girth.
        assert!((back.mmhg().unwrap() - mark.wanted).abs() < 0.1, "{mark:?}");
    }
    assert_eq!(found.marks.iter().find(|mark| mark.landmark == Wrist).unwrap().percent, 100.0);
    assert!(found.rises.is_empty());
}

/// A generator of even numbers from 0 to 1, the same in every run.
pub struct Even(pub u64);

impl Even {
    pub fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 11) as f64) / ((1_u64 << 53) as f64)
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.next()
    }
}

fn random_leg(even: &mut Even) -> Vec<Mark> {
    let ankle = even.between(19.0, 26.0);
    let calf = ankle * even.between(1.5, 1.8);
    let thigh = calf * even.between(1.4, 1.65);
    marks(&[
        (Ankle, 11.0, ankle),
        (LowerCalf, 20.0, ankle + 0.45 * (calf - ankle)),
        (Calf, 31.0, calf),
        (BelowKnee, 40.0, calf * even.between(0.9, 0.97)),
        (MidThigh, 59.0, thigh * even.between(0.8, 0.88)),
        (UpperThigh, 72.0, thigh),
    ])
}

/// Source: issue 9: of 300 random legs 122 read back outside the scheme.
#[test]
fn a_pattern_reads_back_inside_its_scheme() {
    let mut even = Even(9);
    let (mut outside, mut remarked, mut none) = (0, 0, 0);
    for _ in 0..300 {
        let limb = random_leg(&mut even);
        let asked = wanted(
            linear("knit", even.between(300.0, 500.0), 200.0),
            Target::Class(WantedFall::Scheme),
            Some(claim("env-12718", "2")),
        );
        let found = pattern(&OnLimb { limb: Limb::Leg, marks: &limb }, &asked, &rules()).unwrap();
        let Some(read) = found.estimated else { continue };
        outside += usize::from(read.residual.iter().any(|one| one.inside == Some(false)));
        remarked += usize::from(read.grade() != Some(Grade::None));
        none += 1;
    }
    println!("of {none} patterns {outside} read back outside, {remarked} are not confirmed without a remark");
    assert_eq!((none, outside, remarked), (300, 0, 0));
}

fn random_arm(even: &mut Even) -> Vec<Mark> {
    let wrist = even.between(14.0, 19.0);
    let forearm = wrist * even.between(1.35, 1.65);
    let upper = forearm * even.between(1.05, 1.35);
    marks(&[
        (Wrist, 0.0, wrist),
        (LowerForearm, 7.0, f64::midpoint(wrist, forearm)),
        (Forearm, 14.0, forearm),
        (UpperArm, 33.0, upper),
        (Axilla, 42.0, upper * even.between(1.02, 1.2)),
    ])
}

/// Source: issue 9: the same of 300 random arms. No scheme limits an arm's residual pressures (standards.md), so
/// the fall is asked for: to 50 % from mark to mark there is room for a fall without a remark.
#[test]
fn a_pattern_of_a_random_arm_is_confirmed_without_a_remark() {
    let mut even = Even(10);
    let (mut remarked, mut worse) = (0, 0);
    for _ in 0..300 {
        let limb = random_arm(&mut even);
        let knit = linear("knit", even.between(300.0, 500.0), 200.0);
        let target = Target::Reference(even.between(18.0, 30.0), WantedFall::To(50.0));
        let asked = wanted(knit, target, Some(claim("ral-gz-387-2", "2")));
        let found = pattern(&OnLimb { limb: Limb::Arm, marks: &limb }, &asked, &rules()).unwrap();
        let read = found.estimated.unwrap();
        assert_eq!(read.judged(), Some(true));
        assert!(read.residual.iter().all(|one| one.inside != Some(false)));
        remarked += usize::from(read.grade() == Some(Grade::Possible));
        worse += usize::from(read.grade() < Some(Grade::Possible));
    }
    println!("of 300 patterns of arms {remarked} are confirmed with a remark, {worse} are not confirmed");
    assert_eq!((remarked, worse), (0, 0));
}

/// Source: issue 9: pattern then gradient to 1e-9. The relaxed girth as worked out, before the raster of 0.1 mm, is
/// put through the estimate and through the fall: the pressures are those wanted, and so is the drop between marks.
#[test]
fn what_is_worked_out_presses_what_was_wanted_to_nine_figures() {
    let mut even = Even(12);
    let mut seen = 0;
    for round in 0..200 {
        let (kind, limb) = if round % 2 == 0 {
            (Limb::Leg, random_leg(&mut even))
        } else {
            (Limb::Arm, random_arm(&mut even))
        };
        // A curve of four pieces, convex or concave.
        let power = even.between(0.7, 1.5);
        let points: Vec<(f64, f64)> =
            (0..=4).map(|at| (40.0 * f64::from(at), 400.0 * (0.4 * f64::from(at)).powf(power))).collect();
        let cloth = crate::worn_support::knit("knit", &points);
        let target = Target::Reference(even.between(15.0, 35.0), WantedFall::To(even.between(40.0, 80.0)));
        let asked = wanted(cloth.clone(), target, None);
        let found = pattern(&OnLimb { limb: kind, marks: &limb }, &asked, &rules()).unwrap();
        for mark in &found.marks {
            let Some(exact) = mark.exact_cm else { continue };
            let made = estimate_cm(&cloth, 1, mark.girth.cm(), exact, Spread::NONE);
            near(mmhg(made.pressure().unwrap()), mark.wanted, 1e-9);
            seen += 1;
        }
    }
    assert!(seen > 900, "{seen}");
}

/// Source: issue 9: a fall asked for that allows it is confirmed without a remark.
#[test]
fn a_clear_fall_is_confirmed_without_a_remark() {
    let asked = wanted(linear("knit", 400.0, 120.0), Target::Reference(27.0, WantedFall::To(50.0)), None);
    let limb = leg();
    let found = pattern(&OnLimb { limb: Limb::Leg, marks: &limb }, &asked, &rules()).unwrap();
    let read = found.estimated.unwrap();
    assert_eq!((read.grade(), read.judged()), (Some(Grade::None), Some(true)), "{:?}", read.fall);
}

/// Source: design: inside the scheme's limits by at least twice the error of sewing and tape, where there is room.
#[test]
fn a_pattern_keeps_clear_of_the_limits() {
    let mut even = Even(31);
    let mut roomy = 0;
    for _ in 0..40 {
        let limb = random_leg(&mut even);
        let target = Target::Class(WantedFall::Scheme);
        let asked = wanted(linear("knit", 400.0, 200.0), target, Some(claim("env-12718", "2")));
        let found = pattern(&OnLimb { limb: Limb::Leg, marks: &limb }, &asked, &rules()).unwrap();
        let error = |mark: &tapeline::estimate::PatternMark| {
            mark.by_tape.unwrap().hypot(mark.by_sewing.unwrap()) / mark.wanted
        };
        let base = error(&found.marks[0]);
        for residual in &found.estimated.as_ref().unwrap().residual {
            let mark = found.marks.iter().find(|one| one.landmark == residual.landmark).unwrap();
            let limit = residual.limit.as_ref().unwrap();
            let twice = 2.0 * mark.percent * error(mark).hypot(base);
            let (low, high) = (limit.low.unwrap(), limit.high.unwrap());
            if high - low > 2.2 * twice {
                roomy += 1;
                assert!(
                    mark.percent > low + 0.95 * twice && mark.percent < high - 0.95 * twice,
                    "{mark:?} {limit:?}"
                );
            }
        }
        assert!(found.rises.is_empty(), "{:?} {:?}", found.rises, found.marks);
        assert!(found.marks.windows(2).all(|pair| pair[1].wanted <= pair[0].wanted), "{:?}", found.marks);
    }
    assert!(roomy > 40, "{roomy}");
}

/// Two pressures wanted at one landmark wrote a file that could not be read again.
#[test]
fn a_landmark_is_wanted_once() {
    let list = vec![(Landmark::Ankle, 27.0), (Landmark::Calf, 20.0), (Landmark::Ankle, 25.0)];
    let asked = wanted(linear("knit", 400.0, 120.0), Target::List(list), None);
    let limb = leg();
    let found = pattern(&OnLimb { limb: Limb::Leg, marks: &limb }, &asked, &rules());
    assert_eq!(found.err(), Some(NoPattern::Twice(Landmark::Ankle)));
}

/// Source: house rule of the shapes: the first that reads back inside every limit without a remark is taken, and
/// straight in position is tried first (derived: from 100 to 65 %, the middle of 50 to 80, at 9 and 20 of 29 cm); a
/// steeper one is not taken because a rise would be less likely yet.
#[test]
fn the_straight_fall_is_kept_where_it_is_confirmed() {
    let target = Target::Class(WantedFall::Scheme);
    let asked = wanted(linear("knit", 400.0, 200.0), target, Some(claim("env-12718", "2")));
    let mut sure = rules();
    (sure.tape, sure.relaxed_sd_cm) = (TapeSd::everywhere(0.08), 0.07);
    let limb = leg();
    let found = pattern(&OnLimb { limb: Limb::Leg, marks: &limb }, &asked, &sure).unwrap();
    assert_eq!(found.estimated.as_ref().unwrap().grade(), Some(Grade::None));
    for (mark, along) in found.marks.iter().zip([0.0, 9.0, 20.0, 29.0]) {
        near(mark.percent, 100.0 - 35.0 * along / 29.0, 1e-9);
    }
}

/// Source: design: pressures at single landmarks make a garment from two marks on.
#[test]
fn two_wanted_pressures_are_enough_and_one_is_not() {
    let limb = leg();
    let of = |list: &[(Landmark, f64)]| {
        let asked = wanted(linear("knit", 400.0, 120.0), Target::List(list.to_vec()), None);
        pattern(&OnLimb { limb: Limb::Leg, marks: &limb }, &asked, &rules())
    };
    assert_eq!(of(&[]).err(), Some(NoPattern::TooFew));
    assert_eq!(of(&[(Ankle, 25.0)]).err(), Some(NoPattern::TooFew));
    assert_eq!(of(&[(Ankle, 25.0), (Calf, 18.0)]).unwrap().marks.len(), 2);
    assert_eq!(of(&[(Ankle, 25.0), (Calf, 18.0), (BelowKnee, 16.0)]).unwrap().marks.len(), 3);
}

const SHORT_KNIT: &str = "tapeline: fabric/1\nlabel: short\nbasis: invented\ncurve:\n  - {stretch: 0 %, tension: 0 N/m}\n  - {stretch: 30 %, tension: 90 N/m}\n";

/// Source: design: a pressure that the knit does not reach within its tested stretch is said by mark, wanted and at
/// most (derived: K·90/C); one that it reaches is not.
#[test]
fn a_target_beyond_the_knit_is_told_and_one_within_it_is_not() {
    let folder = crate::support::folder(&[("short.yaml", SHORT_KNIT)]);
    let record = crate::source::root().join("demo/narrow-ankle.yaml").display().to_string();
    let told = |at: &str| -> Vec<String> {
        let args = [
            "pattern",
            &record,
            "short.yaml",
            "--at",
            at,
            "--at",
            "calf=8mmHg",
            "--format",
            "json",
            "--today",
            "2026-03-14",
        ];
        let report = crate::support::run_in(folder.path(), &args, None).json();
        let all = report["findings"].as_array().unwrap().iter().filter(|one| one["id"] == "target-beyond");
        all.map(|one| one["message"].as_str().unwrap().to_owned()).collect()
    };
    let most = 4.71277587283339 * 90.0 / 20.1;
    assert!((21.0..21.2).contains(&most));
    assert!(told("ankle=21mmHg").is_empty(), "{:?}", told("ankle=21mmHg"));
    let beyond = told("ankle=23mmHg");
    assert!(
        beyond.len() == 1 && beyond[0].contains("23 mmHg wanted at the ankle, at most 21 mmHg"),
        "{beyond:?}"
    );
}

/// Source: design: neighbours whose wanted pressures do not fall toward the trunk are named; the joint is not judged.
#[test]
fn wanted_pressures_that_rise_are_named_without_the_joint() {
    let limb = arm();
    let of = |list: &[(Landmark, f64)]| {
        let asked = wanted(linear("knit", 400.0, 120.0), Target::List(list.to_vec()), None);
        pattern(&OnLimb { limb: Limb::Arm, marks: &limb }, &asked, &rules()).unwrap().rises
    };
    assert_eq!(of(&[(Wrist, 20.0), (Forearm, 24.0), (Axilla, 12.0)]), [(Wrist, Forearm)]);
    assert_eq!(of(&[(Wrist, 20.0), (Forearm, 20.0)]), [(Wrist, Forearm)]);
    assert!(of(&[(Wrist, 20.0), (Forearm, 19.9)]).is_empty());
    assert!(of(&[(Wrist, 20.0), (Landmark::Elbow, 30.0), (Axilla, 12.0)]).is_empty());
}

/// Source: design: a fall needs two marks.
#[test]
fn a_fall_needs_two_marks() {
    let of = |limb: &[Mark]| {
        let asked = wanted(linear("knit", 400.0, 120.0), Target::Reference(25.0, WantedFall::To(60.0)), None);
        pattern(&OnLimb { limb: Limb::Leg, marks: limb }, &asked, &rules()).map(|found| found.marks.len())
    };
    assert_eq!(of(&marks(&[(Ankle, 11.0, 23.0), (Calf, 31.0, 37.0)])), Ok(2));
    assert_eq!(of(&marks(&[(Ankle, 11.0, 23.0)])), Err(NoPattern::TooFew));
}

/// Source: house rule of the shapes, written out again: straight in position, the same ratio at every step, and three
/// blends between in the logarithm (derived); the first that is confirmed without a remark, else the one least likely
/// to rise.
#[test]
fn of_the_shapes_the_one_least_likely_to_rise_is_taken() {
    let mut even = Even(77);
    let (mut kept, mut later) = (0, 0);
    for _ in 0..160 {
        let limb = random_leg(&mut even);
        let on = OnLimb { limb: Limb::Leg, marks: &limb };
        let (cloth, top) = (linear("knit", even.between(300.0, 500.0), 200.0), even.between(50.0, 74.0));
        // Unsure girths, so that few shapes are confirmed.
        let mut unsure = rules();
        unsure.relaxed_sd_cm = even.between(0.3, 0.9);
        let found =
            pattern(&on, &wanted(cloth.clone(), Target::Reference(25.0, WantedFall::To(top)), None), &unsure)
                .unwrap();
        let (first, last) = (limb[0].at.cm(), limb[limb.len() - 1].at.cm());
        let shape = |even: f64| -> Vec<(Landmark, f64)> {
            let mut before = f64::INFINITY;
            limb.iter()
                .enumerate()
                .map(|(number, mark)| {
                    let straight = 1.0 + (top / 100.0 - 1.0) * (mark.at.cm() - first) / (last - first);
                    let alike = (top / 100.0).powf(number as f64 / (limb.len() - 1) as f64);
                    // Every mark lies a twentieth below the one before it at least.
                    before = (25.0 * straight.powf(1.0 - even) * alike.powf(even)).min(0.95 * before);
                    (mark.landmark.unwrap(), before)
                })
                .collect()
        };
        let tried: Vec<_> = [0.0, 0.25, 0.5, 0.75, 1.0]
            .map(|even| {
                let one =
                    pattern(&on, &wanted(cloth.clone(), Target::List(shape(even)), None), &unsure).unwrap();
                let read = one.estimated.as_ref().unwrap();
                (read.grade(), read.fall.as_ref().unwrap().fall.chance.unwrap(), one)
            })
            .into();
        let best = tried
            .iter()
            .position(|one| one.0 == Some(Grade::None))
            .unwrap_or_else(|| (0..5).min_by(|a, b| tried[*a].1.total_cmp(&tried[*b].1)).unwrap());
        for (mark, other) in found.marks.iter().zip(&tried[best].2.marks) {
            near(mark.wanted, other.wanted, 1e-9);
        }
        if tried[best].0 != Some(Grade::None) {
            kept += 1;
            let differs = |other: usize| {
                let (one, other) = (&tried[best].2.marks, &tried[other].2.marks);
                one.iter().zip(other).any(|(a, b)| (a.wanted / b.wanted - 1.0).abs() > 1e-6)
            };
            later += usize::from(best < 4 && differs(4) && (best == 0 || differs(0)));
        }
    }
    assert!(kept > 20 && later > 0, "{kept} {later}");
}
