//! Edges of the pressure classes and of the graduation limits.

use tapeline::anatomy::{Landmark, Limb};
use tapeline::garment::Schemes;
use tapeline::graduation::{Grade, GraduationBasis, Point, Value, judge, ratios};
use tapeline::quantity::Position;

use crate::direct::rules;

fn class(scheme: &str, mmhg: f64, claimed: Option<&str>) -> String {
    Schemes::default().find(scheme).unwrap().place_of(mmhg, claimed).unwrap().name()
}

#[track_caller]
fn edges(scheme: &str, wanted: &[(f64, &str)]) {
    for (mmhg, name) in wanted {
        assert_eq!(class(scheme, *mmhg, None), *name, "{mmhg} mmHg in {scheme}");
    }
}

#[test]
fn closed_bands_with_gaps() {
    // RAL-GZ 387/1:2008 (published: quality body's own page): 18–21, 23–32, 34–46, from 49.
    edges(
        "ral-gz-387-1",
        &[
            (17.999_999, "below 1"),
            (18.0, "1"),
            (21.0, "1"),
            (21.000_001, "between 1 and 2"),
            (22.999_999, "between 1 and 2"),
            (23.0, "2"),
            (32.0, "2"),
            (33.0, "between 2 and 3"),
            (34.0, "3"),
            (46.0, "3"),
            (48.999_999, "between 3 and 4"),
            (49.0, "4"),
            (500.0, "4"),
        ],
    );
    // RAL-GZ 387/2:2008: 15–21 (secondary: Ochalek 2017, JPSM 54:346), 23–32, 34–46 (memory).
    edges(
        "ral-gz-387-2",
        &[
            (14.999_999, "below 1"),
            (15.0, "1"),
            (21.000_001, "between 1 and 2"),
            (32.0, "2"),
            (46.0, "3"),
            (46.000_001, "above 3"),
        ],
    );
    // ENV 12718:2001 (secondary): A 10–14, 15–21, 23–32, 34–46, from 49.
    edges(
        "env-12718",
        &[
            (9.999, "below A"),
            (10.0, "A"),
            (14.0, "A"),
            (14.5, "between A and 1"),
            (15.0, "1"),
            (46.5, "between 3 and 4"),
            (49.0, "4"),
        ],
    );
    // BS 6612:1985 (secondary): 14–17, 18–24, 25–35.
    edges(
        "bs-6612",
        &[
            (13.9, "below 1"),
            (17.0, "1"),
            (17.5, "between 1 and 2"),
            (18.0, "2"),
            (24.5, "between 2 and 3"),
            (35.0, "3"),
            (35.1, "above 3"),
        ],
    );
}

#[test]
fn half_open_bands_without_gaps() {
    // French classes (published: Porphyre 527, 2016; HAS): 10–15, >15–20, >20–36, >36.
    edges(
        "nf-g30-102",
        &[
            (9.999, "below 1"),
            (10.0, "1"),
            (15.0, "1"),
            (15.000_001, "2"),
            (20.0, "2"),
            (20.000_001, "3"),
            (36.0, "3"),
            (36.000_001, "4"),
        ],
    );
    // Therapeutic Guidelines (secondary): <20, 20–29, 30–40.
    edges(
        "au-guideline",
        &[
            (0.0, "1"),
            (19.999_999, "1"),
            (20.0, "2"),
            (29.0, "2"),
            (29.5, "between 2 and 3"),
            (30.0, "3"),
            (40.0, "3"),
            (40.1, "above 3"),
        ],
    );
    // Partsch et al. 2008, Dermatol Surg 34:600 (memory): <20, 20–<40, 40–<60, >=60.
    edges(
        "icc-2006",
        &[
            (19.999, "mild"),
            (20.0, "moderate"),
            (39.999, "moderate"),
            (40.0, "strong"),
            (59.999, "strong"),
            (60.0, "very strong"),
        ],
    );
}

#[test]
fn a_value_in_two_classes_goes_to_the_claimed_one_else_to_the_higher() {
    // Customary US bands share their ends: 15–20, 20–30, 30–40, 40–50 (published: eurocom glossary; memory).
    edges(
        "us-customary",
        &[
            (14.9, "below 15-20"),
            (15.0, "15-20"),
            (20.0, "20-30"),
            (30.0, "30-40"),
            (40.0, "40-50"),
            (50.0, "40-50"),
            (50.1, "above 40-50"),
        ],
    );
    assert_eq!(class("us-customary", 20.0, Some("15-20")), "15-20");
    assert_eq!(class("us-customary", 20.0, Some("40-50")), "20-30");
}

#[test]
fn the_same_pressure_has_other_numbers_elsewhere() {
    // 30 mmHg is French 3, RAL 2, US 20–30 or 30–40 (derived from the bands).
    assert_eq!(class("nf-g30-102", 30.0, None), "3");
    assert_eq!(class("ral-gz-387-1", 30.0, None), "2");
    assert_eq!(class("us-customary", 30.0, Some("20-30")), "20-30");
}

#[test]
fn every_value_carries_its_basis() {
    // Bases as the list of standards states them.
    let basis = |scheme: &str, class: &str| {
        Schemes::default().find(scheme).unwrap().class(class).unwrap().basis.word()
    };
    for (scheme, class, word) in [
        ("ral-gz-387-1", "1", "published"),
        ("ral-gz-387-1", "4", "published"),
        ("ral-gz-387-2", "1", "secondary"),
        ("ral-gz-387-2", "2", "memory"),
        ("ral-gz-387-2", "3", "memory"),
        ("env-12718", "A", "secondary"),
        ("bs-6612", "2", "secondary"),
        ("nf-g30-102", "3", "published"),
        ("us-customary", "15-20", "memory"),
        ("us-customary", "20-30", "published"),
        ("us-customary", "30-40", "published"),
        ("us-customary", "40-50", "memory"),
        ("au-guideline", "1", "secondary"),
        ("icc-2006", "mild", "memory"),
    ] {
        assert_eq!(basis(scheme, class), word, "{scheme} {class}");
    }
}

fn point(landmark: Landmark, at_cm: i64, mmhg: f64) -> Point {
    Point {
        landmark,
        at: Position::from_tenths(at_cm * 100).unwrap(),
        value: Value::Pressure { mmhg, sd: 0.0, fabrics: tapeline::graduation::Shares::default() },
    }
}

/// Whether the share at a landmark lies inside the limits of a class.
fn inside(class: &str, points: &[(Landmark, f64)], landmark: Landmark) -> Option<bool> {
    let scheme = Schemes::default().find("env-12718").unwrap();
    let points: Vec<Point> = (0..).zip(points).map(|(at, (one, mmhg))| point(*one, at * 10, *mmhg)).collect();
    let all = ratios(&points, Landmark::Ankle, Some(&scheme), Some(class));
    all.iter().find(|ratio| ratio.landmark == landmark).unwrap().inside
}

#[test]
fn shares_of_the_ankle_at_their_limits() {
    use Landmark::{Ankle, BelowKnee, Calf, LowerCalf, MidThigh, UpperThigh};
    // ENV 12718 class 1: C 50–80 % (published: Li 2021 on YY/T 0853): 80.0 passes, 80.1 fails.
    assert_eq!(inside("1", &[(Ankle, 20.0), (Calf, 16.0)], Calf), Some(true));
    assert_eq!(inside("1", &[(Ankle, 20.0), (Calf, 16.02)], Calf), Some(false));
    assert_eq!(inside("1", &[(Ankle, 20.0), (Calf, 10.0)], Calf), Some(true));
    assert_eq!(inside("1", &[(Ankle, 20.0), (Calf, 9.98)], Calf), Some(false));
    // Class 2: F up to 50 %; class 3: up to 40 % (memory): 50 passes the one, 41 fails the other.
    assert_eq!(inside("2", &[(Ankle, 20.0), (MidThigh, 10.0)], MidThigh), Some(true));
    assert_eq!(inside("2", &[(Ankle, 20.0), (UpperThigh, 10.02)], UpperThigh), Some(false));
    assert_eq!(inside("3", &[(Ankle, 20.0), (MidThigh, 8.0)], MidThigh), Some(true));
    assert_eq!(inside("3", &[(Ankle, 20.0), (MidThigh, 8.2)], MidThigh), Some(false));
    assert_eq!(inside("1", &[(Ankle, 20.0), (MidThigh, 12.0)], MidThigh), Some(true));
    // B1 70–100 %: equal to the ankle is allowed.
    assert_eq!(inside("2", &[(Ankle, 20.0), (LowerCalf, 20.0)], LowerCalf), Some(true));
    assert_eq!(inside("2", &[(Ankle, 20.0), (LowerCalf, 20.02)], LowerCalf), Some(false));
    assert_eq!(inside("2", &[(Ankle, 20.0), (LowerCalf, 13.98)], LowerCalf), Some(false));
    // C 70 % with D 75 %: both inside their ranges.
    let both = [(Ankle, 20.0), (Calf, 14.0), (BelowKnee, 15.0)];
    assert_eq!((inside("2", &both, Calf), inside("2", &both, BelowKnee)), (Some(true), Some(true)));
    // French classes 1 and 2: calf at least 75 % (secondary: HAS 2010); class 3 has no limit.
    let scheme = Schemes::default().find("nf-g30-102").unwrap();
    let french = |class: &str, mmhg: f64| {
        let points = [point(Ankle, 0, 20.0), point(Calf, 20, mmhg)];
        ratios(&points, Ankle, Some(&scheme), Some(class)).first().unwrap().inside
    };
    assert_eq!((french("1", 15.0), french("2", 14.98), french("3", 5.0)), (Some(true), Some(false), None));
}

#[test]
fn neighbours_toward_the_trunk() {
    use Landmark::{Ankle, BelowKnee, Calf, Knee, MidThigh, UpperThigh};
    let judged = |profile: &[(Landmark, f64)]| {
        let points: Vec<Point> =
            (0..).zip(profile).map(|(at, (one, mmhg))| point(*one, at * 10, *mmhg)).collect();
        judge(&points, GraduationBasis::Readings, Limb::Leg, UpperThigh, &rules()).verdict
    };
    // RAL: no point above the one distal to it (secondary): C 70 % with D 75 % is inside both ranges yet rises.
    assert_eq!(judged(&[(Ankle, 20.0), (Calf, 14.0), (BelowKnee, 15.0)]), Some(Grade::Certain));
    // Equal is allowed.
    assert_eq!(judged(&[(Ankle, 20.0), (Calf, 14.0), (BelowKnee, 14.0)]), Some(Grade::None));
    // Sigel's profile 18/14/8/10/8 at ankle, calf, knee, lower and upper thigh (memory): regarded as ideal,
    // it dips at the knee, which is left out of the comparison.
    let sigel = [(Ankle, 18.0), (Calf, 14.0), (Knee, 8.0), (MidThigh, 10.0), (UpperThigh, 8.0)];
    assert_eq!(judged(&sigel), Some(Grade::None));
    // The same dip anywhere else is a rise.
    let dip = [(Ankle, 18.0), (Calf, 14.0), (BelowKnee, 8.0), (MidThigh, 10.0), (UpperThigh, 8.0)];
    assert_eq!(judged(&dip), Some(Grade::Certain));
}
