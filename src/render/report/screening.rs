//! Owns the screening in the terminal report: what was asked and what is open.

use crate::document::{Block, Entry};
use crate::report::Report;
use crate::words;

/// What was asked, present, cleared and open.
pub(super) fn screening(report: &Report) -> Vec<Block> {
    let screening = &report.screening;
    let mut blocks = vec![Block::heading("Screening")];
    let dated = match (&screening.asked_on, &screening.by) {
        (Some(on), Some(by)) => format!("asked {on} by {by}"),
        (Some(on), None) => format!("asked {on}"),
        _ => "not dated".to_owned(),
    };
    let open = match screening.unanswered.len() {
        0 => "every question is answered".to_owned(),
        many => format!("{} open", words::counted(many, "question is", "questions are")),
    };
    let mut entries = vec![Entry::new("Answers", format!("{open}; {dated}"))];
    let present: Vec<String> = screening
        .present
        .iter()
        .map(|one| {
            one.side.map_or_else(|| one.item.clone(), |side| format!("{} ({})", one.item, side.name()))
        })
        .collect();
    let list = |all: &[String]| if all.is_empty() { "none".to_owned() } else { all.join(", ") };
    entries.push(Entry::new("Present", list(&present)));
    entries.push(Entry::new("Cleared", list(&screening.cleared)));
    if !screening.unanswered.is_empty() {
        entries.push(Entry::new("Open", screening.unanswered.join(", ")));
    }
    entries.push(Entry::new("Rules", report.rules.name.clone()));
    blocks.push(Block::Entries(entries));
    if let Some(paste) = &screening.paste {
        blocks.push(Block::text(
            "To add to the record and answer; a key that it has already is added to, not written twice:",
        ));
        blocks.push(Block::Verbatim(paste.clone()));
    }
    blocks
}
