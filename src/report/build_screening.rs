//! Owns the blocks of screening and arteries, with the block to paste.

use std::fmt::Write as _;

use super::{ArterialBlock, Figure, GroupBlock, LegBlock, PresentBlock, QuestionBlock, ScreeningBlock};
use crate::anatomy::Side;
use crate::assessment::{Assessment, LimbAssessment, question_name, value_words};
use crate::rules::{AnsweredBy, Group, Severity};
use crate::screening::Screened;

/// The screening's block. What is the client's is told once.
pub(super) fn screening(found: &Assessment) -> ScreeningBlock {
    let record = &found.record;
    let both = record.is_both();
    let mut unanswered: Vec<String> = Vec::new();
    let mut present: Vec<PresentBlock> = Vec::new();
    let mut questions: Vec<QuestionBlock> = Vec::new();
    let mut groups: Vec<GroupBlock> = Vec::new();
    let mut answered = 0;
    for limb in &found.limbs {
        let screened = &limb.screened;
        answered = answered.max(screened.answered);
        for one in &screened.unanswered {
            let side = (both && is_sided(found, one.group, &one.id)).then_some(limb.side);
            if !unanswered.contains(&one.id) {
                unanswered.push(one.id.clone());
            }
            if !questions.iter().any(|other| other.id == one.id && other.side == side) {
                questions.push(QuestionBlock {
                    id: one.id.clone(),
                    question: question(found, &one.id),
                    side,
                });
            }
        }
        for one in &screened.present {
            let told = present.iter().any(|other| other.item == one.item && other.side == one.side);
            if !told {
                present.push(PresentBlock { item: one.item.clone(), side: one.side });
            }
        }
        groups.extend(groups_of(found, limb, both));
    }
    let mut cleared: Vec<String> = found
        .findings
        .iter()
        .filter(|one| one.is_cleared() && one.severity == Severity::ClearFirst)
        .map(|one| one.id.text().to_owned())
        .collect();
    cleared.dedup();
    let paste = (!questions.is_empty()).then(|| paste(found, &questions));
    ScreeningBlock {
        answered,
        unanswered,
        present,
        cleared,
        asked_on: record.screening.asked_on.map(|date| date.to_string()),
        by: record.screening.by.as_ref().map(ToString::to_string),
        groups,
        questions,
        paste,
    }
}

fn is_sided(found: &Assessment, group: Option<Group>, id: &str) -> bool {
    match group {
        Some(group) => found.setting.rules.group_rule(group).is_some_and(|rule| rule.per_side),
        None => !matches!(id, "allergies" | "cause"),
    }
}

/// A question in words.
fn question(found: &Assessment, id: &str) -> String {
    let rules = &found.setting.rules;
    if let Some(item) = rules.item(id) {
        return item.condition.clone();
    }
    if let Some(rule) = rules.observed.iter().find(|rule| rule.key == id) {
        return rule.question.clone();
    }
    match id {
        "allergies" => "Skin allergies to things that touch it?".to_owned(),
        "cause" => "Why is the limb swollen, and who found it out?".to_owned(),
        other => question_name(other),
    }
}

fn groups_of(found: &Assessment, limb: &LimbAssessment, both: bool) -> Vec<GroupBlock> {
    let rules = &found.setting.rules;
    let screened: &Screened = &limb.screened;
    let mut all = Vec::new();
    for group in rules.groups_of(screened.limb) {
        let sided = both && group.per_side;
        if both && !sided && limb.side != found.limbs.first().map_or(Side::Left, |one| one.side) {
            continue;
        }
        let items: Vec<_> = rules
            .group(group.id)
            .filter(|item| item.limbs.include(screened.limb) && item.answered_by == AnsweredBy::Screening)
            .collect();
        let present: Vec<String> = items
            .iter()
            .filter(|item| screened.present(&item.id).is_some())
            .map(|item| question_name(&item.id))
            .collect();
        let open: Vec<String> = items
            .iter()
            .filter(|item| screened.is_open(&item.id))
            .map(|item| question_name(&item.id))
            .collect();
        let asked = &found.record.screening.asked;
        let own = asked.iter().find(|(name, _)| name.text == group.id.word()).map(|(_, date)| *date);
        all.push(GroupBlock {
            group: group.question.clone(),
            side: if sided { limb.side.name().to_owned() } else { String::new() },
            asked_on: own.or(found.record.screening.asked_on).map(|date| date.to_string()),
            absent: items.len().saturating_sub(present.len() + open.len()),
            present,
            open,
        });
    }
    all
}

/// A block to paste: every open question stands under `unknown`, so that pasting it answers nothing.
fn paste(found: &Assessment, questions: &[QuestionBlock]) -> String {
    let mut text = String::new();
    let client: Vec<&QuestionBlock> = questions.iter().filter(|one| one.side.is_none()).collect();
    block(found, &client, "", &mut text);
    for side in [Side::Left, Side::Right] {
        let own: Vec<&QuestionBlock> = questions.iter().filter(|one| one.side == Some(side)).collect();
        if !own.is_empty() {
            let _ = writeln!(text, "{}:", side.name());
            block(found, &own, "  ", &mut text);
        }
    }
    text
}

fn block(found: &Assessment, questions: &[&QuestionBlock], indent: &str, text: &mut String) {
    let rules = &found.setting.rules;
    let has = |id: &str| questions.iter().any(|one| one.id == id);
    let keys: Vec<&str> =
        rules.observed.iter().map(|rule| rule.key.as_str()).filter(|key| has(key)).collect();
    if !keys.is_empty() {
        let list: Vec<String> = keys.iter().map(|key| format!("{key}: unknown")).collect();
        let _ = writeln!(
            text,
            "{indent}observed: {{{}}}   # yes or no; pitting none, minor or strong",
            list.join(", ")
        );
    }
    if has("allergies") {
        let _ = writeln!(text, "{indent}allergies:   # none, or a list as [latex]");
    }
    if has("cause") {
        let _ = writeln!(
            text,
            "{indent}cause: {{known: unknown, by: physician}}   # yes or no, and who found it"
        );
    }
    let mut names: Vec<String> = Vec::new();
    for group in rules.groups_of(found.record.limb) {
        let items: Vec<_> = rules
            .group(group.id)
            .filter(|item| item.limbs.include(found.record.limb) && item.answered_by == AnsweredBy::Screening)
            .collect();
        let open: Vec<&str> = items.iter().map(|item| item.id.as_str()).filter(|id| has(id)).collect();
        if open.len() == items.len() && !open.is_empty() {
            names.push(group.id.word().to_owned());
        } else {
            names.extend(open.into_iter().map(str::to_owned));
        }
    }
    if !names.is_empty() {
        let _ = writeln!(text, "{indent}screening:");
        if indent.is_empty() {
            let _ = writeln!(text, "{indent}  asked_on: {}", found.setting.today);
        }
        let _ = writeln!(
            text,
            "{indent}  unknown: [{}]   # move each to absent or present once asked",
            names.join(", ")
        );
    }
}

/// The arterial values used, with their date.
pub(super) fn arterial(found: &Assessment) -> ArterialBlock {
    let legs = found
        .limbs
        .iter()
        .enumerate()
        .filter_map(|(index, limb)| {
            let decision = limb.screened.arterial.as_ref()?;
            if decision.values.is_empty() && decision.age.is_none() {
                return None;
            }
            let words = if decision.passes {
                "The values given pass."
            } else if decision.has_route {
                "The values given do not pass by themselves."
            } else {
                "The values given are no route to a garment."
            };
            Some(LegBlock {
                limb: index,
                taken_on: decision.age.and_then(crate::screening::Age::date).map(|date| date.to_string()),
                values: decision.values.iter().map(|value| value_words(value, decision.age)).collect(),
                cap_mmhg: limb.cap_mmhg.and_then(Figure::mmhg),
                words: words.to_owned(),
            })
        })
        .collect();
    ArterialBlock { legs }
}
