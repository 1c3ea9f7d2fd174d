//! Owns what the arterial values of a leg bring: each value judged, or nothing known of the arteries.

use super::clearings::decided;
use super::client_findings::{ClientAsked, may_clear};
use crate::finding::arterial_unknown::WhyUnknown;
use crate::finding::{self, Finding, Place, Who};
use crate::rules::{ArterialValue, NumberId, Role, Severity, Urgency};
use crate::screening::{Age, ArterialDecision, ArterialFigure, JudgedValue};
use crate::words;

/// `ABPI 0.65 (2026-03-10)`.
pub fn value_words(value: &JudgedValue, age: Option<Age>) -> String {
    let name = match value.value {
        ArterialValue::Abpi => "Ankle-brachial pressure index",
        ArterialValue::AnklePressure => "Ankle systolic pressure",
        ArterialValue::ToePressure => "Toe pressure",
        ArterialValue::ToeBrachial => "Toe-brachial index",
        ArterialValue::Tcpo2 => "Oxygen pressure of the skin",
        ArterialValue::Clinical => "Clinical vascular assessment",
        ArterialValue::Unknown => "Arteries",
    };
    let figure = match value.figure {
        ArterialFigure::Index(index) => words::trimmed(index, 3),
        ArterialFigure::Quotient(index) => {
            format!("{} (ankle over brachial pressure)", words::trimmed(index, 3))
        }
        ArterialFigure::NotCompressible => "not compressible".to_owned(),
        ArterialFigure::Mmhg(mmhg) => format!("{} mmHg", words::trimmed(mmhg, 1)),
        ArterialFigure::Assessed(clinical) => clinical.word().to_owned(),
    };
    let on = age.and_then(Age::date).map_or_else(|| "undated".to_owned(), words::date_short);
    format!("{name} {figure}, {on}")
}

/// What the arterial values of a leg bring.
pub(super) fn arteries(asked: &ClientAsked<'_>) -> Vec<Finding> {
    let Some(decision) = &asked.screened.arterial else { return Vec::new() };
    let place = Place::limb(asked.index);
    let mut found: Vec<Finding> =
        decision.values.iter().filter_map(|value| arterial_value(asked, decision, value, place)).collect();
    // One value judged twice (index and quotient) is one finding: the worse.
    found.sort_by_key(|one| one.severity);
    let mut seen: Vec<String> = Vec::new();
    found.retain(|one| {
        let new = !seen.iter().any(|id| id == one.id.text());
        seen.push(one.id.text().to_owned());
        new
    });
    if let Some(severity) = decision.unknown(asked.held, &asked.setting.rules) {
        found.push(unknown(asked, decision, severity, place));
    }
    found
}

fn arterial_value(
    asked: &ClientAsked<'_>,
    decision: &ArterialDecision,
    value: &JudgedValue,
    place: Place,
) -> Option<Finding> {
    let severity = value.severity?;
    let rules = &asked.setting.rules;
    let rule = value.rule.and_then(|at| rules.arterial.get(at));
    let said = value_words(value, decision.age);
    let (why, next, basis) = if let Some(rule) = rule {
        (rule.finding.clone(), rule.next.clone(), Some((rule.basis, rule.source.clone())))
    } else if severity == Severity::Stop {
        let next = "No fitting; opinion of the vascular team first.";
        ("The blood supply was judged inadequate".to_owned(), next.to_owned(), None)
    } else {
        let next = "The vascular team gives its opinion and writes a cap.";
        ("The blood supply was judged doubtful".to_owned(), next.to_owned(), None)
    };
    let entry = match value.value {
        ArterialValue::Abpi => &finding::abpi::ENTRY,
        ArterialValue::AnklePressure => &finding::ankle_pressure::ENTRY,
        ArterialValue::ToePressure => &finding::toe_pressure::ENTRY,
        ArterialValue::ToeBrachial => &finding::toe_brachial::ENTRY,
        ArterialValue::Tcpo2 => &finding::tcpo2::ENTRY,
        ArterialValue::Clinical => &finding::clinical::ENTRY,
        ArterialValue::Unknown => &finding::arterial_unknown::ENTRY,
    };
    let list = rules.cleared_by(value.value.word()).map(|list| may_clear(&list)).unwrap_or_default();
    let who = match severity {
        Severity::Stop => vec![Who::Role(Role::Vascular)],
        Severity::Note => Vec::new(),
        _ if list.is_empty() => vec![Who::Role(Role::Vascular)],
        _ => list,
    };
    let urgency = if severity == Severity::Stop { decision.stop_urgency } else { Urgency::Routine };
    let why = why.trim_end_matches('.');
    let one = Finding::of(entry, severity, place)
        .say(format!("{said}. {why}."))
        .next(next, &who)
        .urgency(urgency)
        .decided(decided(&value.clearing));
    Some(match basis {
        Some((basis, source)) => one.basis(basis, source),
        None => one,
    })
}

fn unknown(
    asked: &ClientAsked<'_>,
    decision: &ArterialDecision,
    severity: Severity,
    place: Place,
) -> Finding {
    let limit = asked.setting.number(NumberId::NoValueLimit);
    let given = !decision.values.is_empty();
    let why = match (severity, asked.held) {
        (Severity::Caution, Some(held)) => WhyUnknown::Pressure(held),
        (_, Some(held)) if held > limit => WhyUnknown::Pressure(held),
        (_, None) => WhyUnknown::OpenEnd,
        _ => WhyUnknown::Item,
    };
    finding::arterial_unknown::arterial_unknown(place, severity, given, why)
}
