//! Blocks of reports written by hand: girths, sizes, charts, pressures, findings. Every figure is invented.

#![allow(clippy::assigning_clones, reason = "a fixture reads best as what it sets")]

use tapeline::anatomy::{Landmark, Limb, Side};
use tapeline::assessment::Outcome;
use tapeline::finding::Who;
use tapeline::gradient::{Grade, GradientBasis};
use tapeline::report::*;
use tapeline::rules::{Basis, Severity, Urgency};

pub fn figure(value: f64, decimals: usize) -> Figure {
    Figure::new(value, decimals).unwrap()
}

pub fn cm(value: f64) -> Figure {
    figure(value, 1)
}

pub fn mmhg(value: f64) -> Figure {
    figure(value, 0)
}

/// A girth at its place.
pub struct Taped(pub Landmark, pub f64, pub f64);

pub const ARM: [Taped; 7] = [
    Taped(Landmark::Hand, -7.0, 19.4),
    Taped(Landmark::Wrist, 0.0, 16.9),
    Taped(Landmark::LowerForearm, 8.0, 21.3),
    Taped(Landmark::Forearm, 14.0, 25.7),
    Taped(Landmark::Elbow, 22.0, 26.4),
    Taped(Landmark::UpperArm, 33.0, 30.1),
    Taped(Landmark::Axilla, 41.5, 33.2),
];

pub const LEG: [Taped; 5] = [
    Taped(Landmark::Forefoot, 2.0, 24.4),
    Taped(Landmark::Ankle, 12.0, 23.0),
    Taped(Landmark::LowerCalf, 20.0, 29.5),
    Taped(Landmark::Calf, 30.0, 37.5),
    Taped(Landmark::BelowKnee, 40.0, 34.8),
];

pub fn measured(marks: &[Taped]) -> Vec<MeasuredBlock> {
    marks
        .iter()
        .map(|Taped(landmark, at, girth)| MeasuredBlock {
            landmark: Some(*landmark),
            at_cm: cm(*at),
            girth_cm: cm(*girth),
            tapes: if *landmark == Landmark::Forearm { 2 } else { 1 },
            other_cm: Some(cm(girth - 1.4)),
        })
        .collect()
}

pub fn size(label: &str, marks: &[Taped], shift: f64) -> SizeBlock {
    let measures: Vec<MeasureBlock> = marks
        .iter()
        .filter(|mark| !mark.0.on_extremity())
        .map(|Taped(landmark, _, girth)| {
            let (low, high) = (girth.floor() - 1.0 + shift, girth.floor() + 2.0 + shift);
            let margin = (high - girth).min(girth - low);
            MeasureBlock {
                measure: landmark.name(),
                girth_cm: Some(cm(*girth)),
                low_cm: Some(cm(low)),
                high_cm: Some(cm(high)),
                margin_cm: Some(cm(margin)),
                verdict: if margin < 0.0 {
                    "outside"
                } else if margin < 0.5 {
                    "close"
                } else {
                    "inside"
                },
                direction: (margin < 0.0).then_some(if *girth > high { "tight" } else { "loose" }),
            }
        })
        .collect();
    let outside = measures.iter().any(|one| one.verdict == "outside");
    SizeBlock {
        size: label.to_owned(),
        verdict: if outside { "outside" } else { "inside" },
        reversed: false,
        inside_chance: None,
        measures,
    }
}

pub fn chart(label: &str, style: &str, marks: &[Taped], part: usize) -> ChartBlock {
    ChartBlock {
        label: label.to_owned(),
        printed: label.to_owned(),
        file: "chart.yaml".to_owned(),
        part,
        counted: true,
        style: Some(style.to_owned()),
        claim: Some(ClassBlock {
            scheme: "ral-gz-387-2".to_owned(),
            scheme_name: "RAL-GZ 387/2".to_owned(),
            class: "2".to_owned(),
            printed: "class 2 (23 to 32 mmHg)".to_owned(),
            low: Some(23.0),
            high: Some(32.0),
        }),
        materials: Some(vec!["elastane".to_owned(), "polyamide".to_owned()]),
        hand_part: Some(false),
        outcome: Outcome::TrialFitting,
        also: Vec::new(),
        verdict: "size",
        size: Some(2),
        variant: Some("regular".to_owned()),
        length_note: None,
        nearest: None,
        between: Vec::new(),
        picked: None,
        runner_up: Some(3),
        same_again_chance: None,
        sizes: [("1", -4.0), ("2", -2.0), ("3", 0.0), ("4", 2.0), ("5", 4.0), ("6", 6.0)]
            .into_iter()
            .map(|(label, shift)| size(label, marks, shift))
            .collect(),
        wanted: Vec::new(),
        measured: Vec::new(),
        paste: None,
        line: "size 3 takes every girth with at least 0.7 cm to spare".to_owned(),
    }
}

pub fn pressure(chart: Option<usize>, marks: &[Taped], reference: Landmark) -> PressureBlock {
    let mut above = None::<Landmark>;
    let marks: Vec<MarkBlock> = marks
        .iter()
        .filter(|mark| !mark.0.on_extremity())
        .enumerate()
        .map(|(at, Taped(landmark, place, girth))| {
            let here = 27.0 - 2.3 * at as f64;
            let against = above.map_or_else(String::new, |_| "falls".to_owned());
            above = Some(*landmark);
            MarkBlock {
                landmark: *landmark,
                at_cm: cm(*place),
                girth_cm: cm(*girth),
                relaxed_cm: Some(cm(girth * 0.75)),
                stretch_percent: Some(mmhg(33.0)),
                tension_n_per_m: None,
                pressure_mmhg: Some(mmhg(here)),
                bound: None,
                sd_mmhg: Some(figure(2.0, 1)),
                low_mmhg: Some(mmhg(here - 4.0)),
                high_mmhg: Some(mmhg(here + 4.0)),
                low_worn_mmhg: None,
                high_worn_mmhg: None,
                reading_mmhg: None,
                judged: !landmark.is_joint(),
                against_above: against,
            }
        })
        .collect();
    PressureBlock {
        chart,
        size: Some(2),
        size_label: Some("3".to_owned()),
        garment: "sleeve chart A (invented)".to_owned(),
        basis: Some(GradientBasis::Fabric),
        pulled: false,
        marks,
        read_only: Vec::new(),
        reference: ReferenceBlock {
            scheme_name: Some("RAL-GZ 387/2".to_owned()),
            landmark: reference,
            pressure_mmhg: Some(mmhg(27.0)),
            scheme: Some("ral-gz-387-2".to_owned()),
            class: Some("2".to_owned()),
            claimed_class: Some("2".to_owned()),
            claimed_chance: Some(Figure::chance(0.94).unwrap()),
            claimed_chance_worn: Some(Figure::chance(0.71).unwrap()),
            stiffness_mmhg_per_cm: Some(figure(1.9, 1)),
        },
        top_edge: None,
        folded_edge_mmhg: Some(mmhg(31.0)),
        profile: Vec::new(),
        notes: vec!["a second layer, seams and padding are not in the figures".to_owned()],
    }
}

pub fn gradient(chart: Option<usize>) -> GradientBlock {
    GradientBlock {
        chart,
        size: Some(2),
        size_label: Some("3".to_owned()),
        garment: "sleeve chart A (invented)".to_owned(),
        basis: Some(GradientBasis::Fabric),
        grade: Some(Grade::None),
        judged: Some(true),
        chance: Some(Figure::chance(0.004).unwrap()),
        chance_is_bound: false,
        rise_somewhere: None,
        usual: None,
        trend_low: None,
        trend_high: None,
        end_low: None,
        end_high: None,
        any_rise: None,
        place: None,
        against: None,
        exponents: Vec::new(),
        exponents_words: None,
        pairs: Vec::new(),
        decide: Vec::new(),
        after_strip_pull: Vec::new(),
        after_strip_pull_words: None,
        residual: vec![ResidualBlock {
            landmark: Landmark::UpperArm,
            percent: Some(mmhg(66.0)),
            low: Some(50.0),
            high: Some(80.0),
            inside: Some(true),
        }],
        sentence:
            "by the fabric curve the pressure falls from wrist to axilla; a rise has a chance of under 1 %"
                .to_owned(),
        pulled: false,
        beside: None,
    }
}

pub fn limb(limb: Limb, side: Side, marks: &[Taped]) -> LimbBlock {
    LimbBlock {
        limb,
        side,
        printed: format!("{} {}", side.name(), limb.name()),
        outcome: Some(Outcome::TrialFitting),
        marks: measured(marks),
        lengths: vec![LengthBlock {
            name: if limb == Limb::Arm { "wrist to axilla" } else { "ankle to below-knee" }.to_owned(),
            length_cm: cm(41.5),
            from_positions: true,
        }],
        charts: Vec::new(),
        ranking: Vec::new(),
        pressure: Vec::new(),
        gradient: Vec::new(),
        volume: Some(VolumeBlock {
            tells_pair: true,
            method: "frustum",
            spacing_cm: None,
            measured_ml: Some(figure(2104.0, 0)),
            other_ml: Some(figure(1851.0, 0)),
            excess_ml: Some(figure(253.0, 0)),
            excess_percent: Some(figure(13.7, 0)),
            sd_ml: Some(figure(31.0, 0)),
            grades: Vec::new(),
            parts: vec![PartBlock {
                part: "forearm part".to_owned(),
                measured_ml: Some(figure(870.0, 0)),
                other_ml: Some(figure(740.0, 0)),
                excess_percent: Some(figure(17.0, 0)),
            }],
            differences: Vec::new(),
            not_compared: None,
            words: "ISL: minimal; CTCAE v3: grade 2; 200 mL: met".to_owned(),
        }),
        needs: Vec::new(),
        hand_or_foot_swollen: Some(false),
        flat_knit: false,
    }
}

pub fn finding(
    id: &str,
    severity: Severity,
    urgency: Urgency,
    message: &str,
    next: &str,
    who: &[Who],
) -> FindingRow {
    FindingRow {
        id: id.to_owned(),
        severity,
        urgency,
        place: "client".to_owned(),
        limb: None,
        chart: None,
        size: None,
        landmark: None,
        title: id.replace('-', " "),
        message: message.to_owned(),
        next: next.to_owned(),
        who: who.to_vec(),
        basis: Basis::Published,
        source: String::new(),
        cleared: false,
        refused: false,
        decided_by: None,
        confirm: None,
        open: false,
    }
}

pub fn groups() -> Vec<GroupBlock> {
    [
        ("Anything new and sudden, in the last days?", 8),
        ("I have looked at the skin", 9),
        ("I touched both sides", 3),
        ("Why is it swollen?", 3),
        ("Operations", 3),
        ("Heart, kidneys, liver", 7),
        ("Circulation", 4),
        ("Lines, implants", 4),
        ("Hands, help, pregnancy", 5),
    ]
    .into_iter()
    .map(|(group, absent)| GroupBlock {
        group: group.to_owned(),
        side: String::new(),
        asked_on: Some("2026-03-14".to_owned()),
        present: if absent == 5 { vec!["weak grip or inflamed joints".to_owned()] } else { Vec::new() },
        absent,
        open: Vec::new(),
    })
    .collect()
}

pub fn ranked(chart: usize, rank: usize, shown: &str, result: &str) -> RankedBlock {
    RankedBlock {
        chart,
        part: 0,
        rank,
        shown: shown.to_owned(),
        result: result.to_owned(),
        margin_cm: None,
        margin_at: None,
        direction: None,
        fall: None,
        tie: None,
    }
}
