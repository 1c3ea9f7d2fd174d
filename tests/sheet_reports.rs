//! Reports written by hand, as the sheets are asked to print them. Every figure is invented.

#![allow(clippy::assigning_clones, reason = "a fixture reads best as what it sets")]

use crate::sheet_blocks::*;
use tapeline::anatomy::{Landmark, Limb, Side};
use tapeline::assessment::Outcome;
use tapeline::finding::Who;
use tapeline::report::*;
use tapeline::rules::{Role, Severity, Urgency};

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
