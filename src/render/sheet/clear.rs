//! Owns what must be cleared, answered or measured again before anything is fitted.

use super::subject::{concerns, of_limb};
use super::wording::{EMPTY, sentence};
use crate::document::{Block, Column, Room, Table};
use crate::finding::spoken_list;
use crate::report::{FindingRow, Report};
use crate::rules::Severity;
use crate::words::capital;

/// Most open questions that are written out on the first page; the annex has all.
const FEW: usize = 5;

/// The table of what must be cleared, and what is open.
pub(super) fn clear(report: &Report) -> Vec<Block> {
    let here: Vec<&FindingRow> = report.findings.iter().filter(|one| concerns(report, one)).collect();
    let heavy =
        |one: &&&FindingRow| matches!(one.severity, Severity::Stop | Severity::ClearFirst) && !one.open;
    let mut blocks = Vec::new();
    let mut table = Table::new(
        "",
        vec![
            Column::words("What").at_least(45),
            Column::words("Who may").at_least(20),
            Column::words("Role, reason").at_least(15),
            Column::words("Signature, date").at_least(15),
        ],
    );
    table.room = Room::Writing;
    for finding in here.iter().filter(heavy) {
        table.push(row(report, finding));
    }
    let open: Vec<&&FindingRow> = here.iter().filter(|one| one.open).collect();
    let questions = report.screening.questions.len();
    if table.rows.is_empty() {
        let rest = if open.is_empty() && questions == 0 { " Every question is answered." } else { "" };
        let said = format!("no stop, and nothing that someone must clear.{rest}");
        blocks.push(Block::entry("To be cleared first", said));
    } else {
        blocks.push(Block::heading("To be cleared first"));
        blocks.push(Block::Table(table));
    }
    let mut items: Vec<String> = open.iter().map(|one| finding_words(report, one)).collect();
    if questions > FEW && open.iter().any(|one| one.id == "not-answered") {
        // The finding says how many; the annex has each.
    } else if questions > FEW {
        items.push(format!("{questions} questions are not answered; the annex has each of them. An open question is never a pass."));
    } else {
        items.extend(report.screening.questions.iter().map(|one| {
            let side = one.side.map(|side| format!(" ({})", side.name())).unwrap_or_default();
            format!("Not answered{side}: {}", one.question)
        }));
    }
    if !items.is_empty() {
        blocks.push(Block::strong("Still to be answered or measured again:"));
        blocks.push(Block::Ticks {
            boxes: Vec::new(),
            items: items.into_iter().map(crate::document::Tick::open).collect(),
        });
    }
    blocks
}

fn row(report: &Report, finding: &FindingRow) -> Vec<String> {
    let what = format!("{}{}", of_limb(report, finding.limb), capital(finding.message.trim()));
    let next = if finding.next.is_empty() || finding.cleared {
        String::new()
    } else {
        format!(" {}", sentence(&finding.next))
    };
    let what = format!("{}{next}", sentence(&what));
    if finding.severity == Severity::Stop {
        let never = "A stop is not cleared: only a changed answer or value ends it.";
        return vec![format!("STOP: {what}"), "nobody".to_owned(), never.to_owned(), EMPTY.to_owned()];
    }
    let who = who_may(finding);
    match &finding.decided_by {
        Some(by) => {
            let until = by.until.as_ref().map(|until| format!(", until {until}")).unwrap_or_default();
            let protocol = by.protocol.as_ref().map(|one| format!(", by {one}")).unwrap_or_default();
            let word = if finding.cleared {
                "Cleared"
            } else if finding.refused {
                "REFUSED"
            } else {
                "Does not count"
            };
            vec![
                what,
                who,
                format!("{word}: {}, {}{protocol}", by.role.spoken(), by.reason),
                format!("{}{until}", by.on),
            ]
        }
        None => vec![what, who, String::new(), String::new()],
    }
}

/// Who may clear it, or what ends it where nobody may.
fn who_may(finding: &FindingRow) -> String {
    if finding.refused {
        return "nobody; it was refused".to_owned();
    }
    match finding.id.as_str() {
        "arterial-unknown" => "nobody; a value or an assessment is needed".to_owned(),
        "cap-exceeded" => "nobody; another class, or the missing one, is needed".to_owned(),
        _ if finding.who.is_empty() => "nobody".to_owned(),
        _ => spoken_list(&finding.who),
    }
}

/// A finding as one paragraph: what, and what to do next.
pub(super) fn finding_words(report: &Report, finding: &FindingRow) -> String {
    let text = format!("{}{}", of_limb(report, finding.limb), sentence(&finding.message));
    if finding.next.is_empty() { text } else { format!("{text} {}", sentence(&finding.next)) }
}
