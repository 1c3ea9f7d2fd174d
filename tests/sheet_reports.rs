//! Reports written by hand, as the sheets are asked to print them. Every figure is invented.

#![allow(clippy::assigning_clones, reason = "a fixture reads best as what it sets")]

use tapeline::anatomy::{Landmark, Limb, Side};
use tapeline::assessment::Outcome;
use tapeline::finding::Who;
use tapeline::gradient::{Grade, GradientBasis};
use tapeline::report::*;
use tapeline::rules::{Basis, Role, Severity, Urgency};

fn figure(value: f64, decimals: usize) -> Figure {
    Figure::new(value, decimals).unwrap()
}

fn cm(value: f64) -> Figure {
    figure(value, 1)
}

fn mmhg(value: f64) -> Figure {
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

fn measured(marks: &[Taped]) -> Vec<MeasuredBlock> {
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

fn size(label: &str, marks: &[Taped], shift: f64) -> SizeBlock {
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

fn pressure(chart: Option<usize>, marks: &[Taped], reference: Landmark) -> PressureBlock {
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

fn gradient(chart: Option<usize>) -> GradientBlock {
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

fn limb(limb: Limb, side: Side, marks: &[Taped]) -> LimbBlock {
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

fn groups() -> Vec<GroupBlock> {
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

fn ranked(chart: usize, rank: usize, shown: &str, result: &str) -> RankedBlock {
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

/// A sleeve for a left arm: go on to a trial fitting.
pub fn trial() -> Report {
    let mut arm = limb(Limb::Arm, Side::Left, &ARM);
    let mut other = chart("sleeve chart B (invented)", "sleeve", &ARM, 0);
    other.counted = false;
    other.outcome = Outcome::MadeToMeasure;
    other.size = None;
    other.nearest = Some(3);
    other.line = "no size takes every girth; 1.2 cm too tight at the axilla in size 4".to_owned();
    arm.charts = vec![chart("sleeve chart A (invented)", "sleeve", &ARM, 0), other];
    arm.ranking = vec![ranked(0, 1, "3", "trial fitting"), ranked(1, 2, "nearest 4", "made to measure")];
    arm.pressure = vec![pressure(Some(0), &ARM, Landmark::Wrist)];
    arm.gradient = vec![gradient(Some(0))];
    let fitter = [Who::Role(Role::Fitter)];
    Report {
        schema: "tapeline.report/1",
        tool: Tool { name: "tapeline", version: "0.1.0" },
        today: "2026-03-14".to_owned(),
        decision: DecisionBlock {
            outcome: Some(Outcome::TrialFitting),
            also: Vec::new(),
            urgency: Urgency::Routine,
            subject: SubjectBlock {
                kind: "chart",
                limb: Some(0),
                chart: Some(0),
                name: "sleeve chart A (invented), size 3".to_owned(),
            },
            reason: "Size 3 of sleeve chart A (invented) takes every girth, and its pressure falls toward the trunk."
                .to_owned(),
            next: "Go on to a trial fitting with extra checks.".to_owned(),
            who: fitter.to_vec(),
            acts: Vec::new(),
            by: None,
            findings: Vec::new(),
        },
        record: RecordBlock {
            client: "L-0417".to_owned(),
            measured_on: "2026-03-14".to_owned(),
            measured_by: Some("M2".to_owned()),
            limb: "left arm".to_owned(),
            affected: "left",
            age_band: "adult",
            positions_from: "wrist",
            posture: Some("seated, arm supported, palm down".to_owned()),
            shown: Vec::new(),
            file: "arm.yaml".to_owned(),
        },
        rules: RulesBlock {
            tape: Vec::new(),
            id: "default".to_owned(),
            name: "tapeline's questions, after Rabe 2020 and others".to_owned(),
            lowered: Vec::new(),
        },
        screening: ScreeningBlock {
            answered: 46,
            unanswered: Vec::new(),
            present: vec![PresentBlock { item: "weak-hands".to_owned(), side: None }],
            cleared: Vec::new(),
            asked_on: Some("2026-03-14".to_owned()),
            by: Some("M2".to_owned()),
            groups: groups(),
            questions: Vec::new(),
            paste: None,
        },
        arterial: ArterialBlock { legs: Vec::new() },
        allergies: Some(Vec::new()),
        prescribed: Some("sleeve, class 2 (23 to 32 mmHg) of RAL-GZ 387/2, by consultant".to_owned()),
        findings: vec![
            finding(
                "weak-hands",
                Severity::Caution,
                Urgency::Routine,
                "The hands are weak or the joints are inflamed.",
                "Show a donning aid, and plan who helps.",
                &fitter,
            ),
            finding(
                "same-size-unsure",
                Severity::Note,
                Urgency::Routine,
                "A second measurement would pick size 3 again with a chance of 78 %; else most likely size 4.",
                "",
                &[],
            ),
        ],
        limbs: vec![arm],
        course: None,
        pattern: None,
        limits: vec![
            "All pressures are estimates from tape, ruler and the files given".to_owned(),
            "A certified fitter and the treating clinician decide".to_owned(),
            "Local rules and licensed practice come first".to_owned(),
        ],
    }
}

fn leg(mut report: Report) -> Report {
    let mut one = limb(Limb::Leg, Side::Right, &LEG);
    one.charts = vec![chart("stocking chart A (invented)", "below-knee stocking", &LEG, 0)];
    one.pressure = vec![pressure(Some(0), &LEG, Landmark::Ankle)];
    one.gradient = vec![gradient(Some(0))];
    report.limbs = vec![one];
    report.record.limb = "right leg".to_owned();
    report.record.affected = "right";
    report.record.positions_from = "floor";
    report.record.posture = Some("standing".to_owned());
    report
}

/// A leg whose arterial value must be cleared, and light touch is not felt.
pub fn refer() -> Report {
    let mut report = leg(trial());
    report.decision.outcome = Some(Outcome::Refer);
    report.decision.also = vec![Outcome::MadeToMeasure];
    report.decision.urgency = Urgency::Soon;
    report.decision.by = Some("2026-03-28".to_owned());
    report.decision.reason =
        "The ankle-brachial index of the right leg is 0.72: less blood than usual reaches the foot."
            .to_owned();
    report.decision.next = "Ask the vascular team, with a written cap, before anything is fitted.".to_owned();
    report.decision.who = vec![Who::Role(Role::Vascular), Who::Role(Role::Podiatry)];
    report.arterial.legs = vec![LegBlock {
        limb: 0,
        taken_on: Some("2026-03-10".to_owned()),
        values: vec!["ABPI 0.72".to_owned(), "ankle systolic 92 mmHg".to_owned()],
        cap_mmhg: None,
        words: "cleared first".to_owned(),
    }];
    let mut abpi = finding(
        "abpi",
        Severity::ClearFirst,
        Urgency::Soon,
        "ABPI 0.72 of 2026-03-10: between 0.6 and 0.8.",
        "Ask the vascular team, or podiatry by protocol up to 20 mmHg, for a written cap.",
        &[Who::Role(Role::Vascular), Who::Role(Role::Podiatry)],
    );
    abpi.limb = Some(0);
    let mut feeling = finding(
        "feeling-reduced",
        Severity::ClearFirst,
        Urgency::Routine,
        "Light touch is not felt.",
        "A doctor or podiatry clears it.",
        &[Who::Role(Role::Physician), Who::Role(Role::Podiatry)],
    );
    feeling.cleared = true;
    feeling.decided_by = Some(DecidedBy {
        role: Who::Role(Role::Podiatry),
        reason: "carer looks at the skin each day".to_owned(),
        on: "2026-03-12".to_owned(),
        until: Some("2026-09-12".to_owned()),
        protocol: None,
    });
    let mut worn = finding(
        "cause-not-known",
        Severity::ClearFirst,
        Urgency::Soon,
        "Why the leg is swollen is not written down.",
        "A doctor finds out why before a garment is chosen.",
        &[Who::Role(Role::Physician)],
    );
    worn.limb = Some(0);
    report.findings.splice(0..0, [abpi, feeling, worn]);
    report
}

/// A leg that has gone cold and blue: call for emergency help.
pub fn emergency() -> Report {
    let mut report = leg(trial());
    report.decision.outcome = Some(Outcome::Stop);
    report.decision.also = vec![Outcome::Incomplete];
    report.decision.urgency = Urgency::Emergency;
    report.decision.reason = "The right leg is suddenly white, cold or blue.".to_owned();
    report.decision.next = "Call for emergency help now; nothing is worn on the limb.".to_owned();
    report.decision.who = vec![Who::Role(Role::Physician)];
    report.findings.insert(
        0,
        finding(
            "cold-or-blue-limb",
            Severity::Stop,
            Urgency::Emergency,
            "The limb is suddenly white, cold or blue, with pain or numbness.",
            "Call for emergency help now.",
            &[Who::Role(Role::Physician)],
        ),
    );
    report.findings.insert(
        1,
        finding(
            "suspected-clot",
            Severity::Stop,
            Urgency::SameDay,
            "One-sided swelling came over hours or days and was never examined for a clot.",
            "A doctor examines it today.",
            &[Who::Role(Role::Physician)],
        ),
    );
    report.screening.unanswered = (0..9).map(|at| format!("item-{at}")).collect();
    report.screening.questions = (0..9)
        .map(|at| QuestionBlock {
            id: format!("item-{at}"),
            question: format!("Is there anything of kind {at}?"),
            side: None,
        })
        .collect();
    report
}

/// No stock size serves; the record has folds.
pub fn made() -> Report {
    let mut report = trial();
    report.decision.outcome = Some(Outcome::MadeToMeasure);
    report.decision.reason =
        "No stock size serves: size 4 of sleeve chart A (invented) is 1.2 cm too tight at the axilla."
            .to_owned();
    report.decision.next =
        "Order it made to measure; the order page is filled as far as the record goes.".to_owned();
    let arm = &mut report.limbs[0];
    arm.outcome = Some(Outcome::MadeToMeasure);
    arm.flat_knit = true;
    arm.hand_or_foot_swollen = Some(true);
    arm.needs = vec![
        "the hand is swollen: a hand part is needed".to_owned(),
        "folds: flat knit is preferred".to_owned(),
    ];
    let chart = &mut arm.charts[0];
    chart.outcome = Outcome::MadeToMeasure;
    chart.verdict = "made-to-measure";
    chart.size = None;
    chart.nearest = Some(3);
    chart.variant = None;
    chart.line = "no size takes every girth; 1.2 cm too tight at the axilla in size 4".to_owned();
    report
}

/// Both legs, one stocking chart.
pub fn both_legs() -> Report {
    let mut report = leg(trial());
    let mut left = report.limbs[0].clone();
    left.side = Side::Left;
    left.printed = "left leg".to_owned();
    left.charts[0].size = Some(3);
    left.pressure[0].size = Some(3);
    left.gradient[0].size = Some(3);
    report.limbs.insert(0, left);
    report.record.limb = "both legs".to_owned();
    report.record.affected = "both";
    report.decision.reason =
        "Both legs: a size takes every girth, and its pressure falls toward the trunk.".to_owned();
    report.arterial.legs = (0..2)
        .map(|limb| LegBlock {
            limb,
            taken_on: Some("2026-03-10".to_owned()),
            values: vec!["ABPI 1.04".to_owned()],
            cap_mmhg: None,
            words: "passes".to_owned(),
        })
        .collect();
    report
}

/// A sleeve and a hand piece.
pub fn set() -> Report {
    let mut report = trial();
    let arm = &mut report.limbs[0];
    let mut hand = chart("hand piece chart C (invented)", "hand piece", &ARM, 1);
    hand.variant = None;
    hand.size = Some(1);
    hand.line = "size 2 takes every girth with at least 0.4 cm to spare".to_owned();
    let taped = [
        Taped(Landmark::Hand, -7.0, 19.4),
        Taped(Landmark::ThumbWeb, -5.0, 20.1),
        Taped(Landmark::Wrist, 0.0, 16.9),
    ];
    hand.sizes = ["1", "2", "3"].iter().map(|label| size(label, &taped, 0.0)).collect();
    arm.charts.push(hand);
    report.decision.reason =
        "A size of each part takes every girth, and the pressure falls toward the trunk.".to_owned();
    report
}

/// Every kind with its name.
pub fn all() -> Vec<(&'static str, Report)> {
    vec![
        ("trial", trial()),
        ("refer", refer()),
        ("emergency", emergency()),
        ("made", made()),
        ("both-legs", both_legs()),
        ("set", set()),
    ]
}
