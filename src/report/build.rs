//! Owns the making of a report from an assessment.

use super::model::{ClearedBy, Finding, Question, Report, Screening, Tool};
use super::{
    LIMITS, SENSOR, Summary, chart_block, garment_block, garment_summary, pressure_block, record_block,
    summary, template, volume_block,
};
use crate::assessment::{Assessment, GradientAssessment, OpenRecord, WornEstimate};
use crate::finding;
use crate::rules::Rules;

/// What a report is made from.
#[derive(Clone, Copy, Debug)]
pub struct Inputs<'i> {
    /// The record.
    pub open: &'i OpenRecord,
    /// What was worked out.
    pub found: &'i Assessment,
    /// The rules used.
    pub rules: &'i Rules,
}

/// Makes the report.
pub fn build(inputs: Inputs<'_>) -> Report {
    let found = inputs.found;
    let mut pressure = Vec::new();
    let mut graduation = Vec::new();
    for chart in &found.charts {
        for (at, worn) in &chart.shown {
            let size = chart.chart.sizes.get(*at).map(|size| size.label.as_str());
            pressure.push(pressure_block::pressure(
                &chart.chart.label,
                size,
                worn,
                chart.chart.claim.as_ref(),
            ));
            graduation.push(pressure_block::graduation(&chart.chart.label, size, worn));
        }
    }
    Report {
        charts: found.charts.iter().map(chart_block::chart).collect(),
        ..around(inputs, summary::summary(found), pressure, graduation)
    }
}

/// Makes the report of one garment: the same model without charts, with what the garment adds.
pub fn build_gradient(open: &OpenRecord, found: &GradientAssessment, rules: &Rules) -> Report {
    let (label, size) = (found.asked.label.as_str(), found.asked.size.as_deref());
    let claim = found.asked.outfit.as_ref().and_then(|outfit| outfit.claim.as_ref());
    let mut pressure = Vec::new();
    let mut graduation = Vec::new();
    // What gives the verdict stands first.
    let both: [Option<&WornEstimate>; 2] = if found.by_readings {
        [found.read.as_ref(), found.estimate.as_ref()]
    } else {
        [found.estimate.as_ref(), found.read.as_ref()]
    };
    for worn in both.into_iter().flatten() {
        let mut block = pressure_block::pressure(label, size, worn, claim);
        if let Some(edge) = found.edges.last().filter(|_| worn.marks.iter().all(|mark| mark.read.is_none())) {
            block.top_edge = pressure_block::stated_edge(edge).or(block.top_edge);
        }
        pressure.push(block);
        graduation.push(pressure_block::graduation(label, size, worn));
    }
    let summary = garment_summary::summary(found);
    let inputs = Inputs { open, found: &found.base, rules };
    Report {
        garment: Some(garment_block::garment(found, open, rules)),
        ..around(inputs, summary, pressure, graduation)
    }
}

/// What every report holds, around its pressures.
pub(super) fn around(
    inputs: Inputs<'_>,
    summary: Summary,
    pressure: Vec<super::Pressure>,
    graduation: Vec<super::Graduation>,
) -> Report {
    let Inputs { open, found, rules } = inputs;
    let estimated = pressure.iter().any(|one| one.basis == Some("fabric"));
    let mut limits: Vec<String> = LIMITS.iter().map(|one| (*one).to_owned()).collect();
    if estimated {
        limits.push(SENSOR.to_owned());
    }
    Report {
        schema: "tapeline.report/1",
        tool: Tool { name: "tapeline", version: env!("CARGO_PKG_VERSION") },
        today: found.today.to_string(),
        outcome: found.outcome.map(crate::assessment::Outcome::word),
        also: found.also.iter().map(|one| one.word()).collect(),
        summary,
        record: record_block::record(&open.record),
        prescribed: record_block::prescribed(open),
        findings: found.findings.iter().map(finding).collect(),
        screening: screening(open, rules),
        charts: Vec::new(),
        pressure,
        graduation,
        garment: None,
        pattern: None,
        volume: found.volume.as_ref().map(volume_block::volume),
        limits,
    }
}

fn finding(one: &finding::Finding) -> Finding {
    Finding {
        id: one.id.text().to_owned(),
        severity: one.severity.word(),
        place: one.place.text(),
        chart: one.place.chart.clone(),
        size: one.place.size.clone(),
        landmark: one.place.landmark.map(crate::anatomy::Landmark::name),
        message: one.sentence.clone(),
        next: one.next.clone(),
        basis: one.basis.word(),
        source: one.source.clone(),
        cleared: one.cleared.is_some(),
        cleared_by: one.cleared.as_ref().map(|by| ClearedBy {
            role: by.role.clone(),
            reason: by.reason.clone(),
            on: by.on.clone(),
        }),
        figures: one.figures.iter().copied().filter(|(_, value)| value.is_finite()).collect(),
    }
}

fn screening(open: &OpenRecord, rules: &Rules) -> Screening {
    let screened = &open.screened;
    let question = |id: &String| {
        let item = rules.item(id).map(|item| item.question.clone());
        let observed = rules.observed.iter().find(|rule| rule.key == *id).map(|rule| rule.question.clone());
        Question { id: id.clone(), question: item.or(observed).unwrap_or_default() }
    };
    Screening {
        answered: screened.open.is_empty(),
        unanswered: screened.open.clone(),
        yes: screened.yes.clone(),
        cleared: screened.cleared.iter().map(|one| one.item.text.clone()).collect(),
        asked_on: open.record.screening.asked_on.map(|date| date.to_string()),
        by: open.record.screening.by.clone(),
        questions: screened.open.iter().map(question).collect(),
        template: template::template(open, rules),
        thresholds: rules.label.clone(),
    }
}
