//! Owns the making of the report from an assessment: each part in its own file.

use super::model::{Report, RulesBlock, Tool};
use super::{CourseBlock, LimbBlock, PatternBlock, VolumeBlock};
use super::{
    build_chart, build_decision, build_estimate, build_finding, build_ranking, build_record, build_screening,
};
use crate::assessment::{Assessment, LimbAssessment};
use crate::finding;
use crate::input::YesNo;
use crate::record::LimbRecord;
use crate::volume::VolumeNumbers;

/// Sentences that go with every report.
pub const LIMITS: [&str; 4] = [
    "The figures are estimates from tape, chart and fabric; they are no measurement of pressure on this person.",
    "A certified fitter and the treating clinician decide; local rules and licensed practice come first.",
    "An unknown answer to a screening question is never a pass.",
    "Published chances and ranges describe groups, not one person.",
];

/// Makes the report.
pub fn build(found: &Assessment) -> Report {
    build_with(found, None)
}

/// Makes the report of a pattern beside the check of its garment.
pub fn build_with(found: &Assessment, pattern: Option<PatternBlock>) -> Report {
    let record = &found.record;
    let rules = &found.setting.rules;
    let pressed = found.limbs.iter().any(|limb| !limb.charts.is_empty()) || !found.garments.is_empty();
    let mut limits: Vec<String> = LIMITS.iter().map(|one| (*one).to_owned()).collect();
    if pressed {
        limits.push(build_estimate::NOT_MODELLED.to_owned());
    }
    limits.extend(rules.tape_sentence(record.limb));
    Report {
        schema: "tapeline.report/1",
        tool: Tool { name: "tapeline", version: env!("CARGO_PKG_VERSION") },
        today: found.setting.today.to_string(),
        decision: build_decision::decision(found),
        record: build_record::record(record),
        rules: RulesBlock {
            id: rules.id.clone(),
            name: rules.label_with_counts(),
            lowered: found
                .findings
                .iter()
                .filter(|one| one.id.is(&finding::rules_lowered::ENTRY))
                .map(|one| one.message.clone())
                .collect(),
            tape: rules.tape_said(record.limb),
        },
        screening: build_screening::screening(found),
        arterial: build_screening::arterial(found),
        allergies: build_record::allergies(record),
        prescribed: found
            .limbs
            .iter()
            .find_map(|limb| limb.wanted.as_ref())
            .map(|wanted| wanted.printed.clone()),
        findings: found.findings.iter().map(|one| build_finding::finding(found, one)).collect(),
        limbs: record
            .limbs
            .iter()
            .zip(&found.limbs)
            .enumerate()
            .map(|(index, (limb, assessed))| limb_block(found, index, limb, assessed))
            .collect(),
        course: found.course.as_ref().map(|one| {
            CourseBlock::of(
                one,
                found.record.limb,
                &found.drift,
                &found.worn,
                &VolumeNumbers::of(&found.setting.rules),
            )
        }),
        pattern,
        limits,
    }
}

fn limb_block(found: &Assessment, index: usize, limb: &LimbRecord, assessed: &LimbAssessment) -> LimbBlock {
    let record = &found.record;
    let mut pressure = Vec::new();
    let mut gradient = Vec::new();
    for (place, chart) in assessed.charts.iter().enumerate() {
        for shown in &chart.shown {
            let of = build_estimate::Of {
                chart: Some(place),
                size: Some(shown.size),
                size_label: Some(chart.size_label(shown.size).to_owned()),
                garment: chart.printed.clone(),
                outfit: &shown.outfit,
                estimated: &shown.estimated,
                decide: &shown.decide,
                turns: &shown.turns,
                profile: &[],
            };
            pressure.push(build_estimate::pressure(&of));
            gradient.push(build_estimate::gradient(&of));
        }
    }
    for garment in found.garments.iter().filter(|one| one.limb == index) {
        let of = build_estimate::Of {
            chart: garment.of_chart.map(|(chart, _)| chart),
            size: garment.of_chart.map(|(_, size)| size),
            size_label: None,
            garment: garment.printed.clone(),
            outfit: &garment.outfit,
            estimated: &garment.estimated,
            decide: &garment.decide,
            turns: &garment.turns,
            profile: &garment.profile,
        };
        pressure.push(build_estimate::pressure(&of));
        gradient.push(build_estimate::gradient(&of));
    }
    let is_yes = |answer: Option<YesNo>| answer == Some(YesNo::Yes);
    LimbBlock {
        limb: record.limb,
        side: limb.side,
        printed: format!("{} {}", limb.side.name(), record.limb.name()),
        outcome: assessed.outcome,
        marks: build_record::marks(record, limb),
        lengths: build_record::lengths(record, limb, &assessed.charts),
        charts: assessed.charts.iter().map(|chart| build_chart::chart(found, index, chart)).collect(),
        ranking: build_ranking::ranked(found, index),
        pressure,
        gradient,
        volume: Some(VolumeBlock::of(record.limb, &assessed.volume, record.tells_pair(limb))),
        needs: needs(found, index),
        hand_or_foot_swollen: limb.observed.extremity_swelling.and_then(|answer| match answer {
            YesNo::Yes => Some(true),
            YesNo::No => Some(false),
            YesNo::Unknown => None,
        }),
        flat_knit: is_yes(limb.observed.folds) || is_yes(limb.observed.distortion),
    }
}

/// Needs that hang on no size, from the findings that say them.
fn needs(found: &Assessment, index: usize) -> Vec<String> {
    let kinds = [
        &finding::hand_part_needed::ENTRY,
        &finding::shape_irregular::ENTRY,
        &finding::reduce_first::ENTRY,
        &finding::pitting_strong::ENTRY,
    ];
    found
        .findings
        .iter()
        .filter(|one| one.place.limb == Some(index) && kinds.iter().any(|kind| one.id.is(kind)))
        .map(|one| one.message.clone())
        .collect()
}
