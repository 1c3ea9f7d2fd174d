//! The main job on limbs that nobody here measured: summary figures of an open dataset.

use serde_json::json;

use crate::direct::{arm, chart_of, figure, findings, leg, linear, near, report, word};

/// Means of ln(girth in cm) and their variances.
// Source: 507 adults, openintro `bdims` (Heinz et al. 2003, J Stat Educ 11(2)): arm, then leg.
const ARM: [(&str, i64, f64, f64); 3] =
    [("wrist", 0, 2.7750, 0.007_36), ("forearm", 14, 3.2500, 0.011_93), ("upper-arm", 33, 3.4302, 0.018_58)];
const LEG: [(&str, i64, f64, f64); 4] = [
    ("ankle", 11, 3.0947, 0.006_96),
    ("calf", 31, 3.5826, 0.006_20),
    ("knee", 46, 3.5866, 0.005_13),
    ("mid-thigh", 59, 4.0375, 0.005_93),
];

/// The limb that lies `z` standard deviations of ln(girth) from the mean, to 0.1 cm.
fn limb(list: &[(&str, i64, f64, f64)], z: f64) -> Vec<(String, i64, f64)> {
    let girth = |mean: f64, variance: f64| ((mean + z * variance.sqrt()).exp() * 10.0).round() / 10.0;
    list.iter().map(|(name, at, mean, variance)| ((*name).to_owned(), *at, girth(*mean, *variance))).collect()
}

fn lines(limb: &[(String, i64, f64)]) -> Vec<String> {
    limb.iter().map(|(name, at, girth)| format!("landmark: {name}, at: {at}, girth: {girth}")).collect()
}

#[test]
fn the_mean_arm() {
    let mean = limb(&ARM, 0.0);
    assert_eq!(mean.iter().map(|one| one.2).collect::<Vec<_>>(), [16.0, 25.8, 30.9]);
    let lines = lines(&mean);
    let record = arm(&lines.iter().map(String::as_str).collect::<Vec<_>>());
    // An invented chart around it: the sizes below and above leave it out at the wrist.
    let chart = chart_of(
        "arm",
        "from: wrist\nto: upper-arm\nscheme: ral-gz-387-2\nclass: \"2\"\n",
        &[
            "1 | wrist: 13-15, forearm: 21-25, upper-arm: 25-30 | relaxed: {wrist: 10.2, forearm: 17, upper-arm: 22}",
            "2 | wrist: 15-17, forearm: 24-28, upper-arm: 28-34 | relaxed: {wrist: 11.6, forearm: 19.5, upper-arm: 25}",
            "3 | wrist: 17-19, forearm: 27-31, upper-arm: 32-38 | relaxed: {wrist: 13, forearm: 22, upper-arm: 28}",
        ],
    );
    let made = report(&record, &[(&chart, Some(&linear(220.0)))]);
    assert_eq!((word(&made, "/outcome"), word(&made, "/charts/0/size")), ("try-on", "2"));
    assert_eq!(findings(&made), []);
    for (at, (girth, relaxed)) in [(16.0, 11.6), (25.8, 19.5), (30.9, 25.0)].into_iter().enumerate() {
        // P = 2πk(1/C0 − 1/C) (derived).
        let wanted = 200.0 * std::f64::consts::PI * 220.0 / 133.322_387_415 * (1.0 / relaxed - 1.0 / girth);
        near(figure(&made, &format!("/pressure/0/marks/{at}/pressure_mmhg")), wanted, 1e-11);
    }
    assert_eq!(word(&made, "/graduation/0/verdict"), "none");
    assert_eq!(word(&made, "/pressure/0/reference/class"), "2");
}

#[test]
fn the_mean_leg() {
    let mean = limb(&LEG, 0.0);
    assert_eq!(mean.iter().map(|one| one.2).collect::<Vec<_>>(), [22.1, 36.0, 36.1, 56.7]);
    let lines = lines(&mean);
    let record = leg(&lines.iter().map(String::as_str).collect::<Vec<_>>());
    // Sizes invented for a coverage check on the same people: ankle 21–23, calf 32–38, thigh 50–60 is the third.
    let sizes: Vec<String> = [(17, 26, 42), (19, 29, 46), (21, 32, 50), (23, 35, 54), (25, 38, 58)]
        .into_iter()
        .enumerate()
        .map(|(at, (ankle, calf, thigh))| {
            format!(
                "{} | ankle: {ankle}-{}, calf: {calf}-{}, mid-thigh: {thigh}-{}",
                at + 1,
                ankle + 2,
                calf + 6,
                thigh + 10
            )
        })
        .collect();
    let chart = chart_of(
        "leg",
        "from: ankle\nto: mid-thigh\n",
        &sizes.iter().map(String::as_str).collect::<Vec<_>>(),
    );
    let made = report(&record, &[(&chart, None)]);
    assert_eq!((word(&made, "/outcome"), word(&made, "/charts/0/size")), ("unproven", "3"));
    assert_eq!(
        made["charts"][0]["wanted"],
        json!([
            {"measure": "ankle", "sizes": ["3"]},
            {"measure": "calf", "sizes": ["3", "4"]},
            {"measure": "mid-thigh", "sizes": ["3", "4"]},
        ])
    );
}

#[test]
fn unusual_adults_raise_no_question_within_three_deviations() {
    // The bands were tested on 6,068 other adults without one false question: nor may the limbs of this set.
    for z in [-3.0, -2.0, -1.0, 0.0, 1.0, 2.0, 3.0] {
        for (list, is_leg) in [(limb(&ARM, z), false), (limb(&LEG, z), true)] {
            let lines = lines(&list);
            let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
            let made = report(&if is_leg { leg(&lines) } else { arm(&lines) }, &[]);
            let asked = findings(&made).into_iter().filter(|(id, _)| id.starts_with("unusual")).count();
            assert_eq!(asked, 0, "{z} {list:?}");
        }
    }
}
