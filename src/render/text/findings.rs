//! Owns the findings and the screening in the terminal report.

use super::Page;
use crate::report::{Finding, Report};

/// Prints every finding, worst first within the client and within each garment.
pub(in crate::render) fn print(page: &mut Page, report: &Report) {
    page.heading("Findings");
    if report.findings.is_empty() {
        page.line("none");
    }
    let client = report.findings.iter().filter(|one| one.chart.is_none());
    for finding in client {
        print_one(page, finding);
    }
    let mut place = "";
    for finding in report.findings.iter().filter(|one| one.chart.is_some()) {
        if finding.place != place {
            place = &finding.place;
            page.led("  ", &format!("{place}:"));
        }
        print_one(page, finding);
    }
}

fn print_one(page: &mut Page, finding: &Finding) {
    let lead = format!("  {:<7}", finding.severity.to_uppercase());
    page.led(&lead, &finding.message);
    let hang = " ".repeat(9);
    if let Some(by) = &finding.cleared_by {
        page.led(&hang, &format!("Cleared by {} on {}: {}", by.role, by.on, by.reason));
    } else if !finding.next.is_empty() {
        page.led(&hang, &format!("→ {}", finding.next));
    }
    let source = if finding.source.is_empty() { String::new() } else { format!(": {}", finding.source) };
    page.led(&hang, &format!("[{} · {}{source}]", finding.id, finding.basis));
}

/// Prints what was asked and what is open.
pub(super) fn print_screening(page: &mut Page, report: &Report) {
    page.heading("Screening");
    let screening = &report.screening;
    let dated = match (&screening.asked_on, &screening.by) {
        (Some(on), Some(by)) => format!("asked {on} by {by}"),
        (Some(on), None) => format!("asked {on}"),
        _ => "not dated".to_owned(),
    };
    let open = match screening.unanswered.len() {
        0 => "every question answered".to_owned(),
        1 => "1 question open".to_owned(),
        many => format!("{many} questions open"),
    };
    let list = |words: &[String]| if words.is_empty() { "none".to_owned() } else { words.join(", ") };
    page.paragraph(&format!(
        "{open}; {dated}; yes: {}; cleared: {}",
        list(&screening.yes),
        list(&screening.cleared)
    ));
    match &screening.template {
        Some(template) => {
            page.paragraph("Nothing is answered yet. To paste into the record:");
            page.gap();
            for line in template.lines() {
                page.line(line);
            }
            page.gap();
        }
        None if screening.unanswered.is_empty() => {}
        None => page.led("open: ", &screening.unanswered.join(", ")),
    }
    page.paragraph(&format!("Rules: {}", screening.thresholds));
}
