//! Owns the findings that hold nothing up, and those about charts that do not count.

use super::super::clear::finding_words;
use super::super::subject::{concerns, forbids};
use crate::document::{Block, Entry};
use crate::report::{FindingRow, Report};
use crate::rules::Severity;

/// Cautions and notes, then what was found about other charts.
pub(in super::super) fn seen(report: &Report) -> Vec<Block> {
    let light = |one: &&FindingRow| matches!(one.severity, Severity::Caution | Severity::Note) && !one.open;
    let mut blocks = Vec::new();
    let here: Vec<Entry> = report
        .findings
        .iter()
        .filter(|one| concerns(report, one))
        .filter(light)
        .map(|one| entry(report, one))
        .collect();
    if !here.is_empty() {
        blocks.push(Block::heading(if forbids(report) {
            "Also seen"
        } else {
            "Fit with extra checks, and what else was seen"
        }));
        blocks.push(Block::Entries(here));
    }
    let other: Vec<Entry> =
        report.findings.iter().filter(|one| !concerns(report, one)).map(|one| entry(report, one)).collect();
    if !other.is_empty() {
        blocks.push(Block::heading("Found about charts that were not taken"));
        blocks.push(Block::Entries(other));
    }
    blocks
}

fn entry(report: &Report, finding: &FindingRow) -> Entry {
    let lead = match finding.severity {
        Severity::Stop => "STOP",
        Severity::ClearFirst => "To be cleared first",
        Severity::Caution => "Caution",
        Severity::Note => "Note",
    };
    let place = if concerns(report, finding) { String::new() } else { format!("{}: ", finding.place) };
    Entry::new(lead, format!("{place}{} ({})", finding_words(report, finding), finding.basis.word()))
}
