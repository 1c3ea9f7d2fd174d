//! Owns every screening answer, and the bases and limits.

use super::super::wording::{EMPTY, sentence};
use crate::document::{Block, Column, Table, Tick};
use crate::report::Report;
use crate::words;

/// Every answer: present, absent, unknown; then the open questions to be ticked.
pub(in super::super) fn answers(report: &Report) -> Vec<Block> {
    let screening = &report.screening;
    let mut blocks = vec![Block::heading("Screening, every answer")];
    let mut table = Table::new(
        "",
        vec![
            Column::words("Asked"),
            Column::words("On"),
            Column::words("Present"),
            Column::numbers("Absent", ""),
            Column::words("Unknown or open"),
        ],
    );
    let list = |all: &[String]| if all.is_empty() { EMPTY.to_owned() } else { all.join("; ") };
    for group in &screening.groups {
        let side = if group.side.is_empty() { String::new() } else { format!(" ({})", group.side) };
        table.push(vec![
            format!("{}{side}", group.group),
            group.asked_on.clone().unwrap_or_else(|| "not dated".to_owned()),
            list(&group.present),
            group.absent.to_string(),
            list(&group.open),
        ]);
    }
    if !table.rows.is_empty() {
        blocks.push(Block::Table(table));
    }
    let cleared: Vec<String> = report
        .findings
        .iter()
        .filter(|one| one.cleared)
        .filter_map(|one| {
            let by = one.decided_by.as_ref()?;
            Some(format!("{} ({}, {}: {})", one.title, by.role.spoken(), by.on, by.reason))
        })
        .collect();
    if !cleared.is_empty() {
        blocks.push(Block::entry("Cleared", cleared.join("; ")));
    }
    blocks.push(Block::text(format!(
        "{} answered, {} open; an open question is never a pass.",
        words::counted(screening.answered, "question is", "questions are"),
        screening.unanswered.len()
    )));
    if !screening.questions.is_empty() {
        let items = screening.questions.iter().map(|one| {
            let side = one.side.map(|side| format!(" ({})", side.name())).unwrap_or_default();
            Tick::open(format!("{}{side}", one.question))
        });
        blocks.push(Block::Ticks { boxes: vec!["yes".to_owned(), "no".to_owned()], items: items.collect() });
    }
    blocks
}

/// Bases and limits.
pub(in super::super) fn limits(report: &Report) -> Vec<Block> {
    let limits: Vec<String> = report.limits.iter().map(|one| sentence(one)).collect();
    let mut blocks = vec![
        Block::heading("Bases and limits"),
        Block::text(limits.join(" ")),
        Block::small(format!(
            "Bases: published (the source was read), secondary (read where it is quoted), memory (recalled), derived (worked out), common practice, house rule (ours), or the user\u{2019}s own file. Questions and limits used: {}. Made by {} {} on {}.",
            report.rules.name, report.tool.name, report.tool.version, report.today
        )),
    ];
    if !report.rules.lowered.is_empty() {
        blocks.push(Block::strong("The rules file lowers what is shipped:"));
        blocks.push(Block::List(report.rules.lowered.clone()));
    }
    blocks
}
