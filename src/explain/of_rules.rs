//! Owns the entries that come straight from the rules: questions, arterial values, numbers, sets.

use super::{Entry, Kind};
use crate::anatomy::Limb;
use crate::rules::{
    ArterialRule, ArterialValue, Grade, ItemRule, Limbs, Number, ObservedRule, Rules, SeveritySet,
};
use crate::screening::ALLERGY_ITEM;

pub(super) fn entries(rules: &Rules) -> Vec<Entry> {
    let mut all: Vec<Entry> = rules.items.iter().map(of_item).collect();
    all.extend(rules.observed.iter().map(of_observed));
    all.extend(ArterialValue::WORDS.iter().map(|(_, value)| of_arterial(*value, rules)));
    all.extend(rules.numbers.iter().map(of_number));
    all.extend(rules.severity_sets.iter().map(of_set));
    all
}

fn limb_words(limbs: Limbs) -> &'static str {
    match limbs {
        Limbs::Only(Limb::Arm) => "Asked of arms.",
        Limbs::Only(Limb::Leg) => "Asked of legs.",
        Limbs::Both => "Asked of arms and legs.",
    }
}

fn of_item(item: &ItemRule) -> Entry {
    let mut rule = vec![format!("{} {}", item.question, limb_words(item.limbs))];
    if item.id == ALLERGY_ITEM {
        rule.push("Answered by the record's `allergies`: `[]` means asked, none. A match with the chart's `contains` takes that garment out; `contains` unknown is a review.".to_owned());
    } else {
        rule.push(
            "Not answered, or unknown, is never a pass: the outcome is at best `incomplete`.".to_owned(),
        );
    }
    if let Some(group) = item.group {
        rule.push(format!("Group `{}`; a named item goes before its group.", group.word()));
    }
    if item.emergency {
        rule.push("Said as an emergency.".to_owned());
    }
    if item.postpone {
        rule.push("Girths taken now are not used for sizing.".to_owned());
    }
    if !item.cleared_by.is_empty() {
        rule.push(format!("Cleared only by a role that names one of: {}.", item.cleared_by.join(", ")));
    }
    Entry {
        id: item.id.clone(),
        kind: Kind::Question,
        meaning: item.finding.clone(),
        rule,
        severity: item.severity.word().to_owned(),
        basis: item.basis.word().to_owned(),
        source: item.source.clone(),
        next: item.next.clone(),
    }
}

fn of_observed(rule: &ObservedRule) -> Entry {
    let (severity, next) = match rule.key.as_str() {
        "hand_swelling" => (
            "review for a garment without a hand part",
            "Answer it under `observed`; where it is yes, choose a garment with a hand part or add one.",
        ),
        "pitting" => ("care", "Answer it under `observed`; where it is yes, let the volume settle first."),
        _ => (
            "care; every chart is made to measure",
            "Answer it under `observed`; where it is yes, made to measure.",
        ),
    };
    Entry {
        id: rule.key.clone(),
        kind: Kind::Observed,
        meaning: rule.question.clone(),
        rule: vec![
            limb_words(rule.limbs).to_owned(),
            "Has to be answered; not answered, or unknown, is never a pass.".to_owned(),
        ],
        severity: severity.to_owned(),
        basis: rule.basis.word().to_owned(),
        source: rule.source.clone(),
        next: next.to_owned(),
    }
}

fn limit_words(rule: &ArterialRule) -> String {
    let unit = if rule.value == ArterialValue::Abpi { "" } else { " mmHg" };
    let ends: Vec<String> = [("at least", rule.at_least), ("above", rule.above), ("below", rule.below)]
        .into_iter()
        .filter_map(|(word, limit)| limit.map(|limit| format!("{word} {limit}{unit}")))
        .collect();
    format!("{}: {} ({}, {})", ends.join(" and "), rule.severity.word(), rule.basis.word(), rule.source)
}

fn of_arterial(value: ArterialValue, rules: &Rules) -> Entry {
    let own: Vec<&ArterialRule> = rules.arterial.iter().filter(|rule| rule.value == value).collect();
    let meaning = match value {
        ArterialValue::Abpi => {
            "Ankle-brachial pressure index of the leg, a ratio: the stated one, else ankle over the higher brachial systolic pressure."
        }
        ArterialValue::AnkleSystolic => {
            "Systolic pressure at the ankle, mmHg; judged beside the index, the worse of the two counts."
        }
        ArterialValue::Toe => "Pressure at the toe, mmHg.",
        ArterialValue::Tcpo2 => "Oxygen pressure measured through the skin, mmHg.",
    };
    let mut rule: Vec<String> = own.iter().map(|rule| limit_words(rule)).collect();
    rule.push("What no line covers passes. Legs only; a stop cannot be cleared, a review is cleared by role, reason and date.".to_owned());
    let worst = own.iter().map(|rule| rule.severity).min();
    let mut basis: Vec<&str> = own.iter().map(|rule| rule.basis.word()).collect();
    basis.dedup();
    Entry {
        id: value.word().to_owned(),
        kind: Kind::Arterial,
        meaning: meaning.to_owned(),
        rule,
        severity: worst.map_or("none", |_| "by value, see the rule").to_owned(),
        basis: if basis.is_empty() { "no limit in this set".to_owned() } else { basis.join(" and ") },
        source: "beside each limit".to_owned(),
        next: "At a stop, medical opinion first; at a review, the vascular clinician clears it.".to_owned(),
    }
}

fn of_number(number: &Number) -> Entry {
    Entry {
        id: number.id.id().to_owned(),
        kind: Kind::Number,
        meaning: capital_sentence(&number.why),
        rule: vec![format!("{} = {}", number.id.id(), number.text)],
        severity: "none of its own; findings that use it name theirs".to_owned(),
        basis: number.basis.word().to_owned(),
        source: "said with the meaning".to_owned(),
        next: format!(
            "To replace it: `numbers: [{{id: {}, value: …, basis: …, why: …}}]` in a thresholds file.",
            number.id.id()
        ),
    }
}

fn capital_sentence(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|first| first.to_uppercase().chain(letters).collect::<String>());
    let mut sentence = first.unwrap_or_default();
    if !sentence.ends_with('.') {
        sentence.push('.');
    }
    sentence
}

fn grade_words(grade: &Grade) -> String {
    let ends: Vec<String> = [
        ("at least", grade.at_least),
        ("above", grade.above),
        ("at most", grade.at_most),
        ("below", grade.below),
    ]
    .into_iter()
    .filter_map(|(word, limit)| limit.map(|limit| format!("{word} {limit}")))
    .collect();
    format!("{}: {} ({})", grade.grade, ends.join(" and "), grade.basis.word())
}

fn of_set(set: &SeveritySet) -> Entry {
    let of = match set.of {
        crate::rules::ExcessMeasure::Percent => "excess volume in % of the other limb",
        crate::rules::ExcessMeasure::Millilitres => "excess volume in mL",
        crate::rules::ExcessMeasure::GirthDifference => "largest difference of girth at one mark in cm",
    };
    Entry {
        id: set.set.clone(),
        kind: Kind::SeveritySet,
        meaning: format!("Grades the {of}. Never a verdict alone."),
        rule: set.grades.iter().map(grade_words).collect(),
        severity: "none: shown with the volume".to_owned(),
        basis: "beside each grade".to_owned(),
        source: set.source.clone(),
        next: "Read it beside the course over several visits.".to_owned(),
    }
}
