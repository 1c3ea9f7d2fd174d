//! Owns the order of the terminal report.

use super::{Page, along, findings, sizes, volume};
use crate::report::Report;

/// The report for a terminal of `width` columns.
pub fn text(report: &Report, width: usize) -> String {
    let mut page = Page::new(width);
    head(&mut page, report);
    findings::print(&mut page, report);
    for chart in &report.charts {
        sizes::print(&mut page, chart, report.outcome == Some("stop"));
        for (pressure, graduation) in report.pressure.iter().zip(&report.graduation) {
            if pressure.garment != chart.label {
                continue;
            }
            if chart.nearest.is_some() && chart.nearest == pressure.size {
                along::print_nearest(&mut page, pressure, graduation);
            } else {
                along::print(&mut page, pressure, Some(graduation));
            }
        }
    }
    volume::print(&mut page, report);
    tail(&mut page, report);
    page.finish()
}

/// The screening, the sentences that go with every report, the program.
pub(in crate::render) fn tail(page: &mut Page, report: &Report) {
    findings::print_screening(page, report);
    page.heading("Limits");
    for sentence in &report.limits {
        page.paragraph(sentence);
    }
    page.paragraph(&format!("{} {}", report.tool.name, report.tool.version));
}

/// Client, limb and dates; the outcome and the next step.
pub(in crate::render) fn head(page: &mut Page, report: &Report) {
    let record = &report.record;
    let by = record.measured_by.as_ref().map(|by| format!(" by {by}")).unwrap_or_default();
    let limb = format!("{} {}", record.side, record.limb).to_uppercase();
    page.paragraph(&format!(
        "{} · {limb} · measured {}{by} · checked {}",
        record.client, record.measured, report.today
    ));
    page.gap();
    let about_one = report.garment.is_some() || report.pattern.is_some();
    let lead = match report.outcome {
        None if about_one => String::new(),
        outcome => format!("{}: ", outcome.unwrap_or("no outcome").to_uppercase()),
    };
    page.led(&lead, &report.summary.sentence);
    page.led("Next: ", &report.summary.next);
    if !report.also.is_empty() {
        page.led("Also: ", &report.also.join(", "));
    }
    if let Some(prescribed) = &report.prescribed {
        let style = prescribed.style.as_ref().map(|style| format!("{style}, ")).unwrap_or_default();
        let by = prescribed.by.as_ref().map(|by| format!(" (by {by})")).unwrap_or_default();
        page.led("Prescribed: ", &format!("{style}{}{by}", prescribed.words));
    }
}
