//! Owns the findings in the terminal report: the client's, then garment by garment.

use crate::document::{Block, Entry};
use crate::report::{FindingRow, Report};

/// Every finding, in the report's order.
pub(super) fn findings(report: &Report) -> Vec<Block> {
    let mut blocks = vec![Block::heading("Findings")];
    if report.findings.is_empty() {
        blocks.push(Block::text("none"));
        return blocks;
    }
    let mut entries = Vec::new();
    let mut place = None;
    for finding in &report.findings {
        let here = heading(report, finding);
        if place.as_ref() != Some(&here) {
            if !entries.is_empty() {
                blocks.push(Block::Entries(std::mem::take(&mut entries)));
            }
            blocks.push(Block::strong(format!("{here}:")));
            place = Some(here);
        }
        entries.push(entry(finding));
    }
    blocks.push(Block::Entries(entries));
    blocks
}

/// What a finding is about; with two limbs a chart is named with the limb that it was held against.
fn heading(report: &Report, finding: &FindingRow) -> String {
    let limb = finding.limb.and_then(|at| report.limbs.get(at));
    match limb.filter(|_| report.limbs.len() > 1 && finding.chart.is_some()) {
        Some(limb) => format!("{}, {}", limb.printed, finding.place),
        None => finding.place.clone(),
    }
}

fn entry(finding: &FindingRow) -> Entry {
    let mut entry = Entry::new(finding.severity.word().to_uppercase(), finding.message.clone());
    if let Some(by) = &finding.decided_by {
        let word = if finding.cleared {
            "Cleared"
        } else if finding.refused {
            "Refused"
        } else {
            "Does not count"
        };
        let until = by.until.as_ref().map(|until| format!(", until {until}")).unwrap_or_default();
        let protocol = by.protocol.as_ref().map(|one| format!(", by {one}")).unwrap_or_default();
        entry =
            entry.and(format!("{word} by {} on {}{until}{protocol}: {}", by.role.spoken(), by.on, by.reason));
    }
    if !finding.next.is_empty() && !finding.cleared {
        entry = entry.and(format!("\u{2192} {}", finding.next));
    }
    if let Some(word) = &finding.confirm {
        entry = entry.and(format!("Where it holds, the record says `confirmed: [{word}]`."));
    }
    let source = if finding.source.is_empty() { String::new() } else { format!(": {}", finding.source) };
    entry.and(format!("[{} \u{b7} {}{source}]", finding.id, finding.basis.word()))
}
