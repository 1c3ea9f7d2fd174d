//! The rule of the fall against inputs and results of a separate implementation.

use std::time::Instant;

use serde_json::Value;
use tapeline::anatomy::{Landmark, Limb};
use tapeline::gradient::{
    Band, FallMark, FallRules, FallSetting, GradientBasis, Knit, KnitPart, MarkKind, Part, TensionCurve,
    decide, judge, judge_grade, turns,
};

use crate::fall_support::{Points, RELAXED_SD, TAPE_SD};

struct Case {
    name: String,
    curves: Vec<Points>,
    sds: Vec<f64>,
    basis: GradientBasis,
    band: Band,
    marks: Vec<FallMark>,
    to: Landmark,
    expected: Value,
}

impl Case {
    fn setting(&self) -> FallSetting<'_> {
        let sd = |number: usize| self.sds.get(number).copied().unwrap_or(0.05);
        let knits = self.curves.iter().enumerate();
        let mut knits: Vec<Knit<'_>> = knits
            .map(|(number, curve)| Knit { curve: Some(curve as &dyn TensionCurve), tension_sd: sd(number) })
            .collect();
        if knits.is_empty() {
            knits.push(Knit { curve: None, tension_sd: 0.05 });
        }
        FallSetting {
            limb: self.to.limb(),
            to: self.to,
            basis: self.basis,
            knits,
            band: self.band,
            together: self.sds.len() > 1,
            rules: FallRules::default(),
        }
    }
}

fn number(of: &Value, key: &str) -> Option<f64> {
    of[key].as_f64()
}

fn part(one: &Value) -> Part {
    let flats = one["flat_widths"].as_u64().unwrap_or(1) as u32;
    Part::Knit(KnitPart {
        knit: one["knit"].as_u64().unwrap_or(0) as usize,
        piece: one["knit"].as_u64().unwrap_or(0) as usize,
        relaxed_cm: number(one, "relaxed_cm").unwrap(),
        relaxed_sd_cm: RELAXED_SD / f64::from(flats).sqrt(),
        flat_widths: flats,
        layers: number(one, "layers").unwrap_or(1.0),
    })
}

fn mark(one: &Value) -> FallMark {
    let tapes = one["tapes"].as_u64().unwrap_or(1) as u32;
    let what = if let Some(mmhg) = number(one, "mmhg") {
        let hollow = one["in_hollow"].as_bool() == Some(true);
        MarkKind::Read { mmhg, sd: number(one, "sd_mmhg").unwrap_or(if hollow { 5.0 } else { 2.5 }) }
    } else if let Some(parts) = one["parts"].as_array() {
        MarkKind::Worn(parts.iter().map(part).collect())
    } else {
        MarkKind::Worn(vec![part(one)])
    };
    FallMark {
        landmark: Landmark::parse_word(one["landmark"].as_str().unwrap()).unwrap(),
        at_cm: number(one, "at_cm").unwrap(),
        girth_cm: number(one, "girth_cm").unwrap_or(30.0),
        girth_sd_cm: number(one, "tape_sd_cm").unwrap_or(TAPE_SD) / f64::from(tapes).sqrt(),
        tapes,
        share: 1.0,
        what,
    }
}

fn cases() -> Vec<Case> {
    let text = std::fs::read_to_string("tests/conformance/gradient.json").unwrap();
    let all: Value = serde_json::from_str(&text).unwrap();
    let pair = |one: &Value| (one[0].as_f64().unwrap(), one[1].as_f64().unwrap());
    all["cases"]
        .as_array()
        .unwrap()
        .iter()
        .map(|one| {
            let marks: Vec<FallMark> = one["marks"].as_array().unwrap().iter().map(mark).collect();
            let last = marks.last().unwrap().landmark;
            let missing = one["top"].as_bool() == Some(false);
            let top = if last.limb() == Limb::Arm { Landmark::Axilla } else { Landmark::UpperThigh };
            Case {
                name: one["case"].as_str().unwrap().to_owned(),
                curves: one["curves"]
                    .as_array()
                    .map(|all| {
                        all.iter()
                            .map(|one| Points(one.as_array().unwrap().iter().map(pair).collect()))
                            .collect()
                    })
                    .unwrap_or_default(),
                sds: one["tension_sds"]
                    .as_array()
                    .map(|all| all.iter().map(|sd| sd.as_f64().unwrap()).collect())
                    .unwrap_or_default(),
                basis: match one["basis"].as_str().unwrap() {
                    "fabric" => GradientBasis::Fabric,
                    "stretch" => GradientBasis::Stretch,
                    _ => GradientBasis::Readings,
                },
                band: one["band"].as_array().map_or(Band::UNTESTED, |band| Band {
                    low: band[0].as_f64().unwrap(),
                    high: band[1].as_f64().unwrap(),
                }),
                marks,
                to: if missing { top } else { last },
                expected: one["expected"].clone(),
            }
        })
        .collect()
}

/// Source: `tests/conformance/gradient.json`, a separate implementation of the rule (derived).
#[test]
fn every_case_of_the_separate_implementation_agrees() {
    let mut wrong = Vec::new();
    let cases = cases();
    assert_eq!(cases.len(), 36);
    for case in &cases {
        let fall = judge(&case.marks, &case.setting());
        let mut differs = |what: &str, is: String, should: String| {
            if is != should {
                wrong.push(format!("{}: {what}: {is}, expected {should}", case.name));
            }
        };
        let e = &case.expected;
        let word = |value: &Value| value.as_str().unwrap_or("none").to_owned();
        let name = |place: Option<Landmark>| place.map_or("none", Landmark::name).to_owned();
        differs("grade", fall.grade_of_estimated.word().to_owned(), word(&e["grade"]));
        differs("marks", fall.estimated.len().to_string(), e["marks"].to_string());
        if fall.left_out.is_empty() {
            differs(
                "grade alone",
                judge_grade(&case.marks, &case.setting()).word().to_owned(),
                word(&e["grade"]),
            );
            differs("judged", fall.judged.to_string(), e["judged"].to_string());
            differs("removes", fall.removes.to_string(), e["removes"].to_string());
            differs("place", name(fall.place), word(&e["place"]));
            differs("against", name(fall.against), word(&e["against"]));
        }
        let mut as_undecided = fall.clone();
        as_undecided.grade = fall.grade_of_estimated;
        let named = decide(&case.marks, &case.setting(), &as_undecided).first().copied();
        // A fall that is decided asks for nothing more.
        if e["decide"].is_null() {
            differs("decide", format!("{:?}", named.map(|one| one.action)), "None".to_owned());
        } else if let Some(named) = named {
            differs("action", named.action.word().to_owned(), word(&e["decide"]["action"]));
            differs("at", name(named.landmark), word(&e["decide"]["landmark"]));
            match (named.chance, e["decide"]["chance"].as_f64()) {
                (Some(is), Some(should)) if (is - should).abs() <= 1e-6 => {}
                (None, None) => {}
                (is, should) => {
                    wrong.push(format!("{}: chance to decide {is:?}, expected {should:?}", case.name));
                }
            }
        } else {
            wrong.push(format!("{}: nothing would decide it", case.name));
        }
        let chances = fall.chances.unwrap();
        // The graded chance, A and U rest on integrals, the others are plain formulas.
        for (key, is, close) in [
            ("chance", chances.chance, 1e-6),
            ("rise_somewhere", chances.rise_somewhere, 1e-6),
            ("usual", chances.usual, 1e-6),
            ("trend_low", chances.trend_low, 1e-9),
            ("trend_high", chances.trend_high, 1e-9),
            ("end_low", chances.end_low, 1e-9),
            ("end_high", chances.end_high, 1e-9),
            ("any_rise", chances.any_rise, 1e-9),
            ("pair_chance", chances.pair_chance, 1e-9),
        ] {
            let should = e[key].as_f64().unwrap();
            let off = (is - should).abs();
            // Plain formulas agree in their own size too, far out in the tail.
            let alike = close > 1e-9 || off <= 1e-7 * should + 1e-200;
            if off > close || !alike {
                wrong.push(format!("{}: {key}: {is:e}, expected {should:e}", case.name));
            }
        }
    }
    assert!(wrong.is_empty(), "{} differ:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
#[ignore = "prints times; run it with --release"]
fn times() {
    for case in cases() {
        let setting = case.setting();
        let start = Instant::now();
        for _ in 0..200 {
            std::hint::black_box(judge(&case.marks, &setting));
        }
        let whole = start.elapsed().as_secs_f64() / 200.0 * 1e3;
        let start = Instant::now();
        for _ in 0..200 {
            std::hint::black_box(judge_grade(&case.marks, &setting));
        }
        let grade = start.elapsed().as_secs_f64() / 200.0 * 1e3;
        let fall = judge(&case.marks, &setting);
        let start = Instant::now();
        let found = decide(&case.marks, &setting, &fall);
        let more = start.elapsed().as_secs_f64() * 1e3;
        let start = Instant::now();
        let turned = std::hint::black_box(turns(&case.marks, &setting)).len();
        let turn = start.elapsed().as_secs_f64() * 1e3;
        println!(
            "{whole:.3} ms, grade {grade:.4} ms, decide {more:.2} ms ({}), turns {turn:.2} ms ({turned}): {}",
            found.len(),
            case.name
        );
    }
}
