//! Laws that hold for every limb, not only for the ones in the examples.

use std::f64::consts::PI;

use proptest::prelude::*;
use serde_json::Value;

use crate::chance::Chance;
use crate::direct::{ARM_HEAD, arm, chart_of, figure, linear, listed, report};

/// Girths at wrist, forearm, upper arm and axilla, tenths of a millimetre.
fn girths() -> impl Strategy<Value = [i64; 4]> {
    (1300_i64..2200, 2000_i64..3200, 2400_i64..3800, 2800_i64..4600).prop_map(|(a, b, c, d)| [a, b, c, d])
}

const PLACES: [(&str, i64); 4] = [("wrist", 0), ("forearm", 1400), ("upper-arm", 3300), ("axilla", 4200)];

/// A whole number of tenths of a millimetre in units of 10^`decimals` tenths.
fn written(tenths: i64, decimals: u32) -> String {
    let scale = 10_i64.pow(decimals);
    format!("{}.{:0width$}", tenths / scale, tenths % scale, width = decimals as usize)
}

fn marks(girths: [i64; 4], decimals: u32) -> Vec<String> {
    let place = |((name, at), girth): (&(&str, i64), i64)| {
        format!("landmark: {name}, at: {}, girth: {}", written(*at, decimals), written(girth, decimals))
    };
    PLACES.iter().zip(girths).map(place).collect()
}

fn record(girths: [i64; 4]) -> String {
    let list = marks(girths, 2);
    arm(&list.iter().map(String::as_str).collect::<Vec<_>>())
}

/// A chart of four sizes, each `step` wider than the one before, `width` wide.
fn ladder(start: i64, width: i64, step: i64) -> String {
    let sizes: Vec<String> = (0..4)
        .map(|size| {
            let low = start + size * step;
            format!("{size} | wrist: {}-{}", written(low, 2), written(low + width, 2))
        })
        .collect();
    chart_of("arm", "", &sizes.iter().map(String::as_str).collect::<Vec<_>>())
}

/// A chart with fabric that takes every arm of `girths`.
fn wide() -> String {
    chart_of(
        "arm",
        "from: wrist\nto: axilla\nscheme: ral-gz-387-2\nclass: \"2\"\nprinted_step: 0.1\n",
        &[
            "1 | wrist: 12-23, forearm: 19-33, upper-arm: 23-39, axilla: 27-47 | relaxed: {wrist: 12, forearm: 18.5, upper-arm: 24, axilla: 29}",
        ],
    )
}

/// The sizes of the chart as numbers: picked, else nearest, else the lower one of the gap.
fn place(report: &Value) -> i64 {
    let chart = &report["charts"][0];
    let label = chart["size"].as_str().or(chart["nearest"].as_str());
    let number = |label: &str| label.parse::<i64>().unwrap() * 2;
    label.map_or_else(
        || {
            // Between two sizes: half way, found by the first size that is too small.
            let tight = |size: &&Value| size["measures"][0]["direction"] == "tight";
            let count = chart["sizes"].as_array().unwrap().iter().filter(tight).count();
            2 * i64::try_from(count).unwrap() - 1
        },
        number,
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_thicker_limb_never_gets_a_smaller_size(
        girth in 1000_i64..2600, more in 0_i64..600, width in 50_i64..400, step in 50_i64..400,
    ) {
        let of = |girth: i64| {
            let record = arm(&[&format!("landmark: wrist, at: 0, girth: {}", written(girth, 2))]);
            place(&report(&record, &[(&ladder(1300, width, step), None)]))
        };
        let (thin, thick) = (of(girth), of(girth + more));
        // Sizes that overlap are tied where a girth stands in the middle of two; there is no picked one then.
        if step > width {
            prop_assert!(thick >= thin, "{thin} then {thick}");
        }
    }

    #[test]
    fn the_unit_changes_nothing(girths in girths()) {
        let text = |unit: &str, decimals: u32| {
            let list = marks(girths, decimals);
            let head = ARM_HEAD.replace("length: cm", &format!("length: {unit}"));
            record(girths)
                .replace(ARM_HEAD, &head)
                .split("marks:")
                .next()
                .unwrap()
                .to_owned()
                + &listed(&list.iter().map(String::as_str).collect::<Vec<_>>())
        };
        let fabric = linear(400.0);
        let of = |unit, decimals| report(&text(unit, decimals), &[(&wide(), Some(&fabric))]);
        let cm = of("cm", 2);
        prop_assert_eq!(&cm, &of("mm", 1));
        prop_assert_eq!(&cm, &of("m", 4));
    }

    #[test]
    fn the_order_of_marks_in_the_file_changes_nothing(girths in girths(), shuffle in any::<u64>()) {
        let mut list = marks(girths, 2);
        let sorted = report(&record(girths), &[(&wide(), None)]);
        let mut chance = Chance::of(shuffle);
        for at in (1..list.len()).rev() {
            list.swap(at, chance.below(at + 1));
        }
        let record = arm(&list.iter().map(String::as_str).collect::<Vec<_>>());
        prop_assert_eq!(sorted, report(&record, &[(&wide(), None)]));
    }

    #[test]
    fn chances_lie_between_nought_and_one_and_ranges_hold_their_estimate(girths in girths(), k in 50_u32..1200) {
        let fabric = linear(f64::from(k));
        let made = report(&record(girths), &[(&wide(), Some(&fabric)), (&wide(), None)]);
        let unit = |value: &Value| value.is_null() || value.as_f64().is_some_and(|one| (0.0..=1.0).contains(&one));
        for size in made["charts"].as_array().unwrap().iter().flat_map(|chart| chart["sizes"].as_array().unwrap()) {
            prop_assert!(unit(&size["inside_probability"]));
            for measure in size["measures"].as_array().unwrap() {
                let outside = measure["verdict"] == "outside";
                prop_assert_eq!(outside, measure["margin_cm"].as_f64().unwrap() < 0.0);
                prop_assert_eq!(outside, !measure["direction"].is_null());
            }
        }
        for pressure in made["pressure"].as_array().unwrap() {
            prop_assert!(unit(&pressure["reference"]["claimed_probability"]));
            for mark in pressure["marks"].as_array().unwrap() {
                if let Some(estimate) = mark["pressure_mmhg"].as_f64() {
                    let of = |key: &str| mark[key].as_f64().unwrap();
                    prop_assert!(of("sd_mmhg") >= 0.0 && of("low_mmhg") >= 0.0);
                    prop_assert!(of("low_mmhg") <= estimate && estimate <= of("high_mmhg"));
                }
            }
        }
        for graduation in made["graduation"].as_array().unwrap() {
            let pairs = graduation["pairs"].as_array().unwrap().iter().chain([&graduation["end_to_end"]]);
            for pair in pairs {
                prop_assert!(unit(&pair["chance"]) && unit(&pair["chance_low"]));
                if let (Some(low), Some(high)) = (pair["chance_low"].as_f64(), pair["chance"].as_f64()) {
                    prop_assert!(low <= high);
                }
            }
        }
    }

    #[test]
    fn a_second_reading_alike_changes_the_error_only(girths in girths()) {
        let once = report(&record(girths), &[(&wide(), Some(&linear(400.0)))]);
        let list: Vec<String> =
            marks(girths, 2).iter().zip(girths).map(|(mark, girth)| format!("{mark}, again: {}", written(girth, 2))).collect();
        let record = arm(&list.iter().map(String::as_str).collect::<Vec<_>>());
        let twice = report(&record, &[(&wide(), Some(&linear(400.0)))]);
        for at in 0..4 {
            let path = |key: &str| format!("/pressure/0/marks/{at}/{key}");
            prop_assert_eq!(figure(&once, &path("pressure_mmhg")), figure(&twice, &path("pressure_mmhg")));
            let (one, two) = (figure(&once, &path("sd_mmhg")), figure(&twice, &path("sd_mmhg")));
            // Slack marks have no error at all.
            prop_assert!(two < one || (one <= 0.0 && two <= 0.0), "{one} {two}");
        }
    }

    #[test]
    fn one_chart_says_nothing_about_another(girths in girths(), start in 1100_i64..1800) {
        let other = ladder(start, 200, 200);
        let both = report(&record(girths), &[(&wide(), None), (&other, None)]);
        prop_assert_eq!(&both["charts"][0], &report(&record(girths), &[(&wide(), None)])["charts"][0]);
        prop_assert_eq!(&both["charts"][1], &report(&record(girths), &[(&other, None)])["charts"][0]);
    }

    #[test]
    fn more_tension_keeps_the_grades_of_the_stretch(girths in girths(), k in 50_u32..1200) {
        // A linear fabric twice as strong presses twice as much everywhere: every chance stays.
        let of = |k: f64| report(&record(girths), &[(&wide(), Some(&linear(k)))]);
        let (one, two) = (of(f64::from(k)), of(2.0 * f64::from(k)));
        let chance = |report: &Value| report["graduation"][0]["end_to_end"]["chance"].as_f64();
        match (chance(&one), chance(&two)) {
            (Some(one), Some(two)) => prop_assert!((one - two).abs() < 1e-9),
            (one, two) => prop_assert_eq!(one, two),
        }
    }

    #[test]
    fn limbs_twice_as_large_hold_eight_times_as_much(girths in girths(), other in girths()) {
        let both = |factor: i64| {
            let lines = |girths: [i64; 4], indent: &str| -> String {
                PLACES.iter().zip(girths).fold(format!("{indent}marks:\n"), |text, ((name, at), girth)| {
                    text + &format!(
                        "{indent}  - {{landmark: {name}, at: {}, girth: {}}}\n",
                        written(at * factor, 2),
                        written(girth * factor, 2)
                    )
                })
            };
            let text = format!("{ARM_HEAD}{}other_limb:\n{}", lines(girths, ""), lines(other, "  "));
            report(&text, &[])
        };
        let (one, two) = (both(1), both(2));
        for key in ["measured_ml", "other_ml", "excess_ml"] {
            let path = format!("/volume/{key}");
            let (small, large) = (figure(&one, &path), figure(&two, &path));
            prop_assert!((large - 8.0 * small).abs() <= 1e-9 * large.abs().max(1.0), "{key} {small} {large}");
        }
        // The error of a tape grows with the square only: h·C, not h·C².
        let sd = |report: &Value| figure(report, "/volume/sd_ml");
        prop_assert!((sd(&two) - 4.0 * sd(&one)).abs() <= 1e-9 * sd(&two));
    }
}

/// mmHg of a linear fabric of 400 N/m (derived: P = 2πk(1/C0 − 1/C)).
fn law(c0: f64, c: f64) -> f64 {
    if c <= c0 { 0.0 } else { 200.0 * PI * 400.0 / 133.322_387_415 * (1.0 / c0 - 1.0 / c) }
}

const TRIALS: usize = 20_000;

/// Mean-free check of an SD: its own sampling error is SD/√(2n) for near-normal draws (derived).
fn sd_of(draws: &[f64]) -> f64 {
    let count = draws.len() as f64;
    let mean = draws.iter().sum::<f64>() / count;
    (draws.iter().map(|draw| (draw - mean).powi(2)).sum::<f64>() / (count - 1.0)).sqrt()
}

#[test]
fn simulation_confirms_the_error_of_one_pressure_and_the_chance_of_a_rise() {
    // Simulated with the errors that the rules state: tape 0.35 cm, relaxed girth 0.3 cm, each mark its own;
    // tension 5 %, one draw for the whole garment.
    let (lower, upper) = ((16.5_f64, 22.0_f64), (24.9_f64, 38.5_f64));
    let record = crate::direct::leg(&[
        &format!("landmark: ankle, at: 11, girth: {}", lower.1),
        &format!("landmark: calf, at: 31, girth: {}", upper.1),
    ]);
    let size = format!("1 | ankle: 20-24 | relaxed: {{ankle: {}, calf: {}}}", lower.0, upper.0);
    let chart = chart_of("leg", "from: ankle\nto: below-knee\n", &[&size]);
    let made = report(&record, &[(&chart, Some(&linear(400.0)))]);
    let mut chance = Chance::of(20_260_314);
    let (mut ankles, mut calves, mut rises, mut differences) = (Vec::new(), Vec::new(), 0, Vec::new());
    for _ in 0..TRIALS {
        let mut draw = |mark: (f64, f64)| (mark.0 + 0.3 * chance.normal(), mark.1 + 0.35 * chance.normal());
        let (ankle, calf) = (draw(lower), draw(upper));
        let tension = 1.0 + 0.05 * chance.normal();
        let (low, high) = (tension * law(ankle.0, ankle.1), tension * law(calf.0, calf.1));
        ankles.push(low);
        calves.push(high);
        differences.push((high - low) / tension);
        rises += usize::from(high > low);
    }
    // Four sampling errors of an SD.
    let tolerance = 4.0 / (2.0 * TRIALS as f64).sqrt();
    for (at, draws) in [(0, &ankles), (1, &calves)] {
        let (found, wanted) = (figure(&made, &format!("/pressure/0/marks/{at}/sd_mmhg")), sd_of(draws));
        assert!((found / wanted - 1.0).abs() < tolerance, "mark {at}: {found}, simulated {wanted}");
    }
    let pair = &made["graduation"][0]["pairs"][0];
    let (found, wanted) = (figure(pair, "/sd_mmhg"), sd_of(&differences));
    assert!((found / wanted - 1.0).abs() < tolerance, "rise: {found}, simulated {wanted}");
    let (found, share) = (figure(pair, "/chance"), rises as f64 / TRIALS as f64);
    let sampling = (share * (1.0 - share) / TRIALS as f64).sqrt();
    assert!((0.02..0.98).contains(&share), "a share of {share} shows little");
    assert!((found - share).abs() < 4.0 * sampling, "chance {found}, simulated {share} ± {sampling}");
}

#[test]
fn simulation_confirms_the_chance_of_a_rise_by_stretch_alone() {
    // Tension as a power of the stretch, exponents 0.7 and 1.5; tape 0.35 cm, relaxed 0.3 cm.
    let (lower, upper) = ((16.5_f64, 22.0_f64), (18.9_f64, 26.4_f64));
    let record = crate::direct::leg(&[
        &format!("landmark: ankle, at: 11, girth: {}", lower.1),
        &format!("landmark: lower-calf, at: 20, girth: {}", upper.1),
    ]);
    let size = format!("1 | ankle: 20-24 | relaxed: {{ankle: {}, lower-calf: {}}}", lower.0, upper.0);
    let chart = chart_of("leg", "from: ankle\nto: below-knee\n", &[&size]);
    let made = report(&record, &[(&chart, None)]);
    let share = |exponent: f64, seed: u64| {
        let mut chance = Chance::of(seed);
        let rises = (0..TRIALS).filter(|_| {
            let mut press = |mark: (f64, f64)| {
                let (c0, c) = (mark.0 + 0.3 * chance.normal(), mark.1 + 0.35 * chance.normal());
                (c / c0 - 1.0).max(0.0).powf(exponent) / c
            };
            press(lower) < press(upper)
        });
        rises.count() as f64 / TRIALS as f64
    };
    let (one, other) = (share(0.7, 1), share(1.5, 2));
    let pair = &made["graduation"][0]["pairs"][0];
    for (key, share) in [("chance_low", one.min(other)), ("chance", one.max(other))] {
        let found = figure(pair, &format!("/{key}"));
        let sampling = (share * (1.0 - share) / TRIALS as f64).sqrt();
        assert!((0.05..0.95).contains(&share), "{key}: a share of {share} shows little");
        assert!((found - share).abs() < 4.0 * sampling, "{key} {found}, simulated {share} ± {sampling}");
    }
}
