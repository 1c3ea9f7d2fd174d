//! Volumes of one visit against published and derived figures.

use std::f64::consts::PI;

use tapeline::anatomy::{Landmark, Limb, Side};
use tapeline::record::{Affected, Mark, Record, VolumeMethod};
use tapeline::volume::{
    CutOffGrade, PartOfLimb, Setting, Station, Uncompared, VisitVolume, disc, frustum, measure,
};

use CutOffGrade::{Moderate, NoneOrMild, Severe};

use crate::made::{limb, mark, near, record, rules, serial};

fn stations(list: &[(f64, f64)], sd_cm: f64) -> Vec<Station> {
    list.iter().map(|(at_cm, girth_cm)| Station { at_cm: *at_cm, girth_cm: *girth_cm, sd_cm }).collect()
}

fn cone(first: f64, second: f64, height: f64) -> f64 {
    frustum(&stations(&[(0.0, first), (height, second)], 0.0)).unwrap().ml
}

/// Girths at an even spacing from zero.
fn even(girths: &[f64], spacing: f64) -> Vec<(f64, f64)> {
    (0_u8..).zip(girths).map(|(at, girth)| (f64::from(at) * spacing, *girth)).collect()
}

fn first(record: &Record) -> VisitVolume {
    measure(record, &record.limbs[0], &rules())
}

#[test]
fn cut_cones() {
    // V = h(C1² + C1C2 + C2²)/12π, exact for a straight-sided limb (derived).
    near(cone(20.0, 20.0, 4.0), 127.323_954_47, 1e-10);
    near(cone(20.0, 24.0, 4.0), 154.486_398_09, 1e-10);
    near(cone(30.0, 40.0, 10.0), 981.455_482_48, 1e-10);
    near(cone(6.0 * PI, 10.0 * PI, 6.0), 98.0 * PI, 1e-12);
    near(cone(16.0 * PI, 10.0 * PI, 12.0), 516.0 * PI, 1e-12);
    near(cone(0.0, 12.0 * PI, 10.0), 120.0 * PI, 1e-12);
}

#[test]
fn a_bulged_limb() {
    // C = 24 + 4 sin(πx/40) over 40 cm, exact ∫C²/4π = 2248.00308050 mL (derived): cut cones at 4 and 10 cm
    // fall short by 0.161 and 1.010 %, discs at 4 cm give 2249.6077.
    let girth = |x: f64| 24.0 + 4.0 * (PI * x / 40.0).sin();
    let every = |step: f64, from: f64| -> Vec<(f64, f64)> {
        (0_u8..=40)
            .map(|n| from + f64::from(n) * step)
            .take_while(|x| *x <= 40.0)
            .map(|x| (x, girth(x)))
            .collect()
    };
    let exact = 2_248.003_080_50;
    let four = frustum(&stations(&every(4.0, 0.0), 0.0)).unwrap().ml;
    let ten = frustum(&stations(&every(10.0, 0.0), 0.0)).unwrap().ml;
    assert!((four - 2244.3824).abs() < 5e-5 && (100.0 * (four / exact - 1.0) + 0.161).abs() < 5e-4, "{four}");
    assert!((ten - 2225.3082).abs() < 5e-5 && (100.0 * (ten / exact - 1.0) + 1.010).abs() < 5e-4, "{ten}");
    let discs = disc(&stations(&every(4.0, 2.0), 0.0)).unwrap().ml;
    assert!((discs - 2249.6077).abs() < 5e-5, "{discs}");
}

// Invented arm, 11 girths at 4 cm from the wrist, at two visits: the other arm U, the affected A.
pub const U1: [f64; 11] = [15.8, 16.6, 18.3, 20.4, 22.3, 23.6, 24.0, 24.6, 25.9, 27.2, 28.5];
pub const A1: [f64; 11] = [17.0, 18.2, 20.5, 23.0, 25.2, 26.6, 27.0, 27.5, 28.6, 29.6, 30.5];
pub const U2: [f64; 11] = [15.8, 16.6, 18.2, 20.3, 22.2, 23.5, 23.9, 24.5, 25.8, 27.1, 28.4];
pub const A2: [f64; 11] = [16.4, 17.4, 19.3, 21.6, 23.7, 25.0, 25.4, 26.0, 27.2, 28.4, 29.5];

fn both_arms(measured: &[f64], other: &[f64]) -> Record {
    let marks = |girths| serial(Limb::Arm, girths, 4.0);
    record("2026-03-14", Limb::Arm, marks(measured), Some(marks(other)))
}

#[test]
fn an_arm_at_two_visits() {
    // Cut cones and discs of each list (derived).
    for (girths, cones, discs) in [
        (U1, 1_655.363_136, 1_825.367_141),
        (A1, 2_039.798_718, 2_235.079_711),
        (U2, 1_642.640_290, 1_811.721_196),
        (A2, 1_834.174_775, 2_016.579_073),
    ] {
        let list = stations(&even(&girths, 4.0), 0.2);
        near(frustum(&list).unwrap().ml, cones, 3e-10);
        near(disc(&list).unwrap().ml, discs, 3e-10);
    }
    // SD of the first for a tape SD of 0.2 cm (derived): 8.945 mL.
    let one = frustum(&stations(&even(&U1, 4.0), 0.2)).unwrap();
    assert!((one.sd_ml() - 8.945).abs() < 5e-4, "{}", one.sd_ml());
    // The same error at every mark: the volume of girths 0.2 cm larger, to first order (derived).
    let wider: Vec<f64> = U1.iter().map(|girth| girth + 0.2).collect();
    let more = frustum(&stations(&even(&wider, 4.0), 0.0)).unwrap().ml - one.ml;
    near(one.shared_sd_ml, more, 5e-3);
}

#[test]
fn the_excess_of_an_arm() {
    // Excess at visits 1 and 2 (derived): 384.435582 mL, 23.223640 %; 191.534486 mL, 11.660160 %.
    for (affected, other, ml, percent) in
        [(A1, U1, 384.435_582, 23.223_640), (A2, U2, 191.534_486, 11.660_160)]
    {
        let excess = first(&both_arms(&affected, &other)).excess.unwrap();
        near(excess.ml, ml, 5e-9);
        near(excess.percent, percent, 5e-8);
    }
    let volume = first(&both_arms(&A1, &U1));
    near(volume.spacing_cm.unwrap(), 4.0, 1e-12);
    // Both limbs' tapes are independent, each mark 0.35 cm (derived): V1's own slopes, worked out here.
    let variance = |girths: &[f64; 11]| -> f64 {
        let slope = |at: usize| {
            let part = |other: Option<&f64>| {
                other.map_or(0.0, |other| 4.0 * (2.0 * girths[at] + other) / (12.0 * PI))
            };
            part(at.checked_sub(1).and_then(|below| girths.get(below))) + part(girths.get(at + 1))
        };
        (0..11).map(|at| (0.35 * slope(at)).powi(2)).sum()
    };
    near(volume.sd_ml().unwrap(), (variance(&A1) + variance(&U1)).sqrt(), 1e-12);
    let mut discs = both_arms(&A1, &U1);
    discs.volume_method = VolumeMethod::Disc;
    let discs = first(&discs);
    near(discs.measured.unwrap().ml, 2_235.079_711, 3e-10);
    near(discs.other.unwrap().ml, 1_825.367_141, 3e-10);
}

#[test]
fn which_side_is_affected() {
    // Excess is affected minus not affected, in % of the latter (published: Cochrane CD003475),
    // whichever was measured first.
    let mut turned = both_arms(&U1, &A1);
    turned.affected = Affected::One(Side::Right);
    let excess = first(&turned).excess.unwrap();
    near(excess.ml, 384.435_582, 5e-9);
    near(excess.percent, 23.223_640, 5e-8);
    for affected in [Affected::Both, Affected::Neither] {
        let mut both = both_arms(&A1, &U1);
        both.affected = affected;
        let volume = first(&both);
        assert!(volume.excess.is_none() && volume.grades.is_empty() && volume.cut_offs.is_none());
        near(volume.measured.unwrap().ml, 2_039.798_718, 3e-10);
        near(volume.other.unwrap().ml, 1_655.363_136, 3e-10);
        assert!(volume.girths.iter().all(|pair| pair.difference_tenths.is_none()));
    }
    // Two limbs of one record: one excess, whichever limb is asked.
    let mut two = both_arms(&A1, &U1);
    let right = two.limbs[0].other_limb.take().unwrap();
    two.limbs.push(limb(Side::Right, right, None));
    for at in [0, 1] {
        let volume = measure(&two, &two.limbs[at], &rules());
        near(volume.excess.unwrap().percent, 23.223_640, 5e-8);
    }
}

fn of(volume: &VisitVolume, set: &str) -> Option<String> {
    volume.grades.iter().find(|one| one.set == set).map(|one| one.grade.clone())
}

/// A limb whose excess is `tenths` tenths of a per cent: a cylinder of 30 cm girth against one of
/// 30·√(1 + excess), volumes in the wanted proportion.
fn cylinders(kind: Limb, tenths: u32) -> Record {
    let thick = (30.0 * (1.0 + f64::from(tenths) / 1000.0).sqrt() * 100.0).round() / 100.0;
    let marks = |girth| serial(kind, &[girth; 11], 4.0);
    record("2026-03-14", kind, marks(thick), Some(marks(30.0)))
}

#[test]
fn grades_of_an_excess() {
    // ISL consensus: minimal >5–<20 %, moderate 20–40 %, severe >40 % (published >40; the rest memory); CTCAE
    // v3: 1 5–10, 2 >10–30, 3 >30 % (published); 200 mL, 10 %, 2 cm (published: Armer & Stewart 2005).
    let arm = |tenths: u32| first(&cylinders(Limb::Arm, tenths));
    for (tenths, isl, ctcae) in [
        (30, "none", "none"),
        (80, "minimal", "1"),
        (150, "minimal", "2"),
        (250, "moderate", "2"),
        (350, "moderate", "3"),
        (450, "severe", "3"),
    ] {
        let volume = arm(tenths);
        assert_eq!(of(&volume, "isl").as_deref(), Some(isl), "{tenths}");
        assert_eq!(of(&volume, "ctcae-v3").as_deref(), Some(ctcae), "{tenths}");
    }
    let words = |set: &str, low, high| (of(&arm(low), set).unwrap(), of(&arm(high), set).unwrap());
    // 40 cm of 30 cm girth hold 2864.8 mL (derived): 6 % are 172 mL, 8 % are 229 mL. 2 cm on 30 cm are 13.8 %.
    let no_yes = || ("no".to_owned(), "yes".to_owned());
    assert_eq!(words("200-ml", 60, 80), no_yes());
    assert_eq!(words("10-percent", 95, 105), no_yes());
    assert_eq!(words("2-cm", 130, 145), no_yes());
    // The three were published of arms: on a leg they are not shown.
    let leg = first(&cylinders(Limb::Leg, 150));
    let sets: Vec<&str> = leg.grades.iter().map(|one| one.set.as_str()).collect();
    assert_eq!(sets, ["isl", "ctcae-v3"]);
}

#[test]
fn cut_offs_by_dominance() {
    // Gjorup 2018, LRB 16:75 (published): dominant arm 6 %, 10 %; other arm 0 %, 4 %; leg 3 %, 6 %.
    let grade = |kind, dominance, tenths| {
        let mut record = cylinders(kind, tenths);
        record.dominance = dominance;
        first(&record).cut_offs.map(|one| one.grade)
    };
    let (left, right) = (Some(Side::Left), Some(Side::Right));
    for (kind, dominance, tenths, wanted) in [
        (Limb::Arm, left, 50, Some(NoneOrMild)),
        (Limb::Arm, left, 80, Some(Moderate)),
        (Limb::Arm, left, 110, Some(Severe)),
        (Limb::Arm, right, 30, Some(Moderate)),
        (Limb::Arm, right, 50, Some(Severe)),
        (Limb::Arm, None, 50, None),
        (Limb::Leg, None, 20, Some(NoneOrMild)),
        (Limb::Leg, None, 50, Some(Moderate)),
        (Limb::Leg, left, 70, Some(Severe)),
    ] {
        assert_eq!(grade(kind, dominance, tenths), wanted, "{kind:?} {dominance:?} {tenths}");
    }
}

#[test]
fn unequal_spacing_and_the_split_of_a_segment() {
    // x 0 7 12 20.5 31 42, C 16 21 25.5 26 29.5 33 (derived): 2356.09662; cut at 35 cm: 1789.499049 + 566.597571.
    let marks = [(0.0, 16.0), (7.0, 21.0), (12.0, 25.5), (20.5, 26.0), (31.0, 29.5), (42.0, 33.0)];
    near(frustum(&stations(&marks, 0.0)).unwrap().ml, 2_356.096_62, 1e-9);
    let at_35 = 29.5 + (33.0 - 29.5) * 4.0 / 11.0;
    let below = [&marks[..5], &[(35.0, at_35)]].concat();
    near(frustum(&stations(&below, 0.0)).unwrap().ml, 1_789.499_049, 1e-9);
    near(cone(at_35, 33.0, 7.0), 566.597_571, 1e-8);
    assert!(disc(&stations(&marks, 0.0)).is_none(), "a disc needs equal spacing");
    assert!(frustum(&stations(&marks[..1], 0.0)).is_none());
}

#[test]
fn a_leg_of_another_implementation() {
    // PyPI `yeadon` (BSD), sample file male1, left leg: its own segment volumes (independent implementation).
    let segments = [(10.1, 52.0), (26.35, 48.9), (42.6, 35.1), (56.5, 35.2), (81.6, 25.5)];
    let wanted = [3292.3233, 2301.6103, 1366.6455, 1855.5063];
    // As a leg from the floor; which landmark each girth is called is ours.
    let names = [Landmark::UpperThigh, Landmark::MidThigh, Landmark::Knee, Landmark::Calf, Landmark::Ankle];
    let mut marks: Vec<Mark> = names
        .into_iter()
        .zip(segments)
        .map(|(name, (x, girth))| mark(Some(name), 100.0 - x, girth))
        .collect();
    marks.reverse();
    let volume = first(&record("2026-03-14", Limb::Leg, marks.clone(), Some(marks)));
    for (found, ml) in volume.segments.iter().rev().zip(wanted) {
        assert!((found.measured.ml - ml).abs() < 5e-5, "{found:?} {ml}");
    }
    assert_eq!(volume.excess.unwrap().ml, 0.0);
    let part = |which| volume.part(which).unwrap().measured.ml;
    assert!((part(PartOfLimb::Distal) - wanted[3] - wanted[2]).abs() < 1e-4);
    assert!((part(PartOfLimb::Proximal) - wanted[1] - wanted[0]).abs() < 1e-4);
}

#[test]
fn the_parts_of_discs_add_up() {
    // A disc around the joint's mark is cut in half (derived).
    let mut one = both_arms(&A1, &U1);
    one.volume_method = VolumeMethod::Disc;
    one.limbs[0].marks[6].landmark = Some(Landmark::Elbow);
    let other = one.limbs[0].other_limb.as_mut().unwrap();
    other[6].landmark = Some(Landmark::Elbow);
    let volume = first(&one);
    let sum: f64 = volume.parts.iter().map(|part| part.measured.ml).sum();
    near(sum, 2_235.079_711, 3e-10);
    let sum: f64 = volume.segments.iter().map(|one| one.measured.ml).sum();
    near(sum, 2_235.079_711, 3e-10);
    let elbow: f64 = A1[..6].iter().map(|girth| 4.0 * girth * girth / (4.0 * PI)).sum();
    let half = 2.0 * A1[6] * A1[6] / (4.0 * PI);
    near(volume.part(PartOfLimb::Distal).unwrap().measured.ml, elbow + half, 1e-12);
}

#[test]
fn hand_and_foot_are_series_of_their_own() {
    // Tape cannot do them well (published: Framework 2006): marks beyond the wrist change no volume.
    let without = both_arms(&A1, &U1);
    let mut with = without.clone();
    with.limbs[0].marks.insert(0, mark(Some(Landmark::Hand), -8.0, 20.0));
    with.limbs[0].other_limb.as_mut().unwrap().insert(0, mark(Some(Landmark::Hand), -8.0, 19.0));
    let (one, other) = (first(&without), first(&with));
    assert_eq!(one.measured, other.measured);
    assert_eq!(one.excess, other.excess);
    assert_eq!(other.extremity.len(), 1);
    assert_eq!(other.extremity[0].difference_tenths, Some(100));
    // A hand on one side only stops no comparison.
    with.limbs[0].other_limb.as_mut().unwrap().remove(0);
    assert_eq!(first(&with).excess, one.excess);
    // A serial mark before the wrist is hand as well.
    let mut serial = without.clone();
    serial.limbs[0].marks.insert(0, mark(None, -4.0, 18.0));
    assert_eq!(first(&serial).measured, one.measured);
}

#[test]
fn limbs_of_other_marks_are_not_compared() {
    let mut fewer = both_arms(&A1, &U1);
    fewer.limbs[0].other_limb.as_mut().unwrap().pop();
    let volume = first(&fewer);
    assert_eq!(volume.uncompared, Some(Uncompared::OtherMarks));
    assert!(volume.other.is_none() && volume.excess.is_none() && volume.measured.is_some());
    // The same landmarks at their own positions are compared: each limb has its own length (derived: two
    // cylinders of 30 cm girth, 10 and 11 cm long, are 10/11 of each other).
    let pair =
        |to: f64| vec![mark(Some(Landmark::Wrist), 0.0, 30.0), mark(Some(Landmark::Forearm), to, 30.0)];
    let volume = first(&record("2026-03-14", Limb::Arm, pair(11.0), Some(pair(10.0))));
    near(volume.excess.unwrap().percent, 10.0, 1e-9);
}

#[test]
fn what_each_setting_can_tell() {
    // 1.96·√2·SD (derived): between visits 1.2 % of the volume or the tape's own where that is larger, two
    // repeats 0.8 % (house rules); U1's own SD at 0.35 cm is 8.945·0.35/0.2 mL (derived).
    let volume = first(&both_arms(&U1, &A1));
    let at = |setting| volume.detectable_in(setting).unwrap();
    let own = 8.945 * 0.35 / 0.2;
    assert!((at(Setting::SameSitting).sd_ml - own).abs() < 1e-3);
    near(at(Setting::SameSitting).change_ml, 1.96 * 2.0_f64.sqrt() * at(Setting::SameSitting).sd_ml, 1e-12);
    near(at(Setting::BetweenVisits).sd_percent, 1.2, 1e-12);
    near(at(Setting::BetweenVisits).change_percent, 1.96 * 2.0_f64.sqrt() * 1.2, 1e-12);
    near(at(Setting::TwoRepeats).sd_percent, 0.8, 1e-12);
    // Three marks tell less: the tape's own SD is the larger one there.
    let three = record("2026-03-14", Limb::Arm, serial(Limb::Arm, &[16.0, 25.0, 30.0], 16.0), None);
    let three = first(&three);
    let own = three.detectable_in(Setting::SameSitting).unwrap().sd_percent;
    assert!(own > 1.2);
    near(three.detectable_in(Setting::BetweenVisits).unwrap().sd_percent, own, 1e-12);
}
