//! Owns the top of the fitter's leaf: the result, and what must be cleared first.

use super::subject::{State, Subject};
use super::wording::sentence;
use super::{Block, Tone, Weight};
use crate::report::Finding;

/// The result in words, loud when nothing may be fitted.
pub(super) fn result(subject: Subject<'_>) -> Vec<Block> {
    let report = subject.report;
    let mut said = vec![Block::Text(Tone::Lead, report.summary.sentence.clone())];
    if !report.summary.next.is_empty() {
        said.push(Block::text(format!("Next: {}", report.summary.next)));
    }
    if !report.also.is_empty() {
        let also: Vec<String> = report.also.iter().map(|one| one.replace('-', " ")).collect();
        said.push(Block::text(format!("Beside this: {}.", also.join(", "))));
    }
    let mut blocks = match subject.state {
        State::Trial => said,
        State::Stop => vec![frame(Weight::Black, "STOP: DO NOT FIT ANY GARMENT FROM THIS SHEET", said)],
        State::Wait => {
            let outcome = report.outcome.unwrap_or("no chart given").replace('-', " ").to_uppercase();
            vec![frame(Weight::Thick, &format!("{outcome}: no garment is fitted from this sheet yet"), said)]
        }
    };
    blocks.push(Block::Keys(keys(subject)));
    blocks
}

fn frame(weight: Weight, title: &str, inside: Vec<Block>) -> Block {
    Block::Frame { weight, title: title.to_owned(), inside }
}

fn keys(subject: Subject<'_>) -> Vec<(String, String)> {
    let record = &subject.report.record;
    let screening = &subject.report.screening;
    let mut keys = Vec::new();
    let mut key = |name: &str, value: String| keys.push((name.to_owned(), value));
    key("Client", format!("{}, {}", record.client, record.age_band));
    let affected = match record.affected {
        "both" => "both limbs".to_owned(),
        "none" => "neither limb".to_owned(),
        side => format!("{side} {}", record.limb),
    };
    key("Limb", format!("{} (affected: {affected})", subject.limb_in_capitals()));
    let at = record.measured_at.as_ref().map(|at| format!(" {at}")).unwrap_or_default();
    let by = record.measured_by.as_deref().map(|by| format!(" by {by}")).unwrap_or_default();
    key("Measured", format!("{}{at}{by}", record.measured));
    if let Some(posture) = &record.posture {
        key("Posture", posture.clone());
    }
    if let Some(weight) = &record.weight_kg {
        key("Weight", format!("{} kg", weight.text));
    }
    let by = screening.by.as_deref().map(|by| format!(" by {by}")).unwrap_or_default();
    let asked = screening.asked_on.as_ref().map_or_else(|| "not dated".to_owned(), |on| format!("{on}{by}"));
    let answered = if screening.answered { "every question answered" } else { "NOT COMPLETE" };
    key("Screening", format!("{answered}, {asked}"));
    if let Some(given) = &record.garment_given {
        key("Present garment", format!("given {given}"));
    }
    keys
}

/// What must be cleared before anything is fitted, with room for names.
pub(super) fn to_clear(subject: Subject<'_>) -> Vec<Block> {
    let findings = &subject.report.findings;
    let open = |one: &&Finding| {
        subject.concerns(one) && !one.cleared && one.severity != "care" && one.severity != "note"
    };
    let questions = &subject.report.screening.questions;
    let mut blocks = vec![Block::heading("To be cleared first")];
    let standing: Vec<&Finding> = findings.iter().filter(open).collect();
    if standing.is_empty() && questions.is_empty() {
        blocks.push(Block::text("No stop and no open review; every question was answered."));
    }
    for one in standing {
        blocks.push(Block::strong(finding_words(one)));
        if one.severity == "stop" {
            blocks.push(Block::text(
                "A stop is not cleared by anyone; only a changed answer or value ends it.",
            ));
        } else {
            blocks.push(Block::blanks(&[&["Cleared by (role)", "Reason"], &["Signature, date"]]));
        }
    }
    if !questions.is_empty() {
        blocks.push(Block::strong(format!(
            "Not answered yet: {}. An open question is never a pass.",
            if questions.len() == 1 {
                "1 question".to_owned()
            } else {
                format!("{} questions", questions.len())
            }
        )));
        blocks.push(Block::Ticks {
            boxes: vec!["yes", "no"],
            items: questions.iter().map(|one| question(&one.question, &one.id)).collect(),
        });
    }
    let cleared: Vec<String> =
        findings.iter().filter(|one| subject.concerns(one) && one.cleared).map(finding_words).collect();
    if !cleared.is_empty() {
        blocks.push(Block::strong("Cleared by role and reason:"));
        blocks.push(Block::List(cleared));
    }
    blocks
}

fn question(words: &str, id: &str) -> String {
    if words.is_empty() { id.to_owned() } else { words.to_owned() }
}

/// Cares and notes about the client and the chart shown.
pub(super) fn also_seen(subject: Subject<'_>) -> Vec<Block> {
    let quiet = |one: &&Finding| {
        subject.concerns(one) && !one.cleared && (one.severity == "care" || one.severity == "note")
    };
    let items: Vec<String> = subject.report.findings.iter().filter(quiet).map(finding_words).collect();
    if items.is_empty() {
        Vec::new()
    } else {
        vec![
            Block::heading(if subject.state == State::Trial { "Fit with extra checks" } else { "Also seen" }),
            Block::List(items),
        ]
    }
}

/// A finding as one paragraph: its weight in capitals, what, next, who cleared it, its basis.
pub(super) fn finding_words(one: &Finding) -> String {
    let mut text = format!("{}: {}", one.severity.to_uppercase(), sentence(&one.message));
    if !one.next.is_empty() {
        text = format!("{text} {}", sentence(&one.next));
    }
    if let Some(by) = &one.cleared_by {
        text = format!("{text} Cleared by {} on {}: {}", by.role, by.on, sentence(&by.reason));
    }
    format!("{text} ({}; basis: {})", one.id, one.basis)
}
