//! Owns the terminal form of a garment that was worked out for a wanted pressure.

use super::gradient::{capital, text};
use super::plot::{Series, plot};
use crate::render::text::{Page, print_along, print_findings, print_head, print_tail};
use crate::report::{PatternBlock, Report};

/// The report of a pattern for a terminal of `width` columns.
pub fn pattern_text(report: &Report, width: usize) -> String {
    let mut page = Page::new(width);
    print_head(&mut page, report);
    let Some(pattern) = &report.pattern else { return page.finish() };
    print_findings(&mut page, report);
    page.heading(&format!("Pattern: {}", pattern.label));
    if let Some(caution) = pattern.caution {
        page.line(&capital(caution));
    }
    table(&mut page, pattern);
    for note in &pattern.notes {
        page.paragraph(note);
    }
    drawn(&mut page, pattern);
    for (pressure, graduation) in report.pressure.iter().zip(&report.graduation) {
        if let Some(caution) = pattern.caution {
            page.gap();
            page.line(&capital(caution));
        }
        print_along(&mut page, pressure, graduation);
    }
    print_tail(&mut page, report);
    page.finish()
}

fn table(page: &mut Page, pattern: &PatternBlock) {
    let layers = if pattern.layers == 1 { String::new() } else { format!(", {} layers", pattern.layers) };
    page.paragraph(&format!(
        "{}{layers}, curve {}, tested to {} %.",
        pattern.fabric,
        pattern.fabric_basis,
        text(pattern.tested_percent.as_ref())
    ));
    let head =
        ["mark", "girth", "mmHg", "share", "relaxed", "flat", "stretch", "reduction", "tape", "sewing"];
    let rows: Vec<Vec<String>> = pattern
        .marks
        .iter()
        .map(|one| {
            vec![
                one.label.clone(),
                text(one.girth_cm.as_ref()),
                text(one.wanted_mmhg.as_ref()),
                text(one.wanted_percent.as_ref()),
                text(one.relaxed_cm.as_ref()),
                text(one.flat_width_cm.as_ref()),
                text(one.stretch_percent.as_ref()),
                text(one.reduction_percent.as_ref()),
                format!("±{}", text(one.tape_error_mmhg.as_ref())),
                format!("±{}", text(one.sewing_error_mmhg.as_ref())),
            ]
        })
        .collect();
    page.table(&head.map(str::to_owned), &rows, &[1, 2, 3, 4, 5, 6, 7, 8, 9]);
    page.paragraph(
        "Girths in cm; %: of the reference; tape and sewing: mmHg for one SD of the girth and of the sewn girth.",
    );
}

fn drawn(page: &mut Page, pattern: &PatternBlock) {
    let wanted = pattern
        .marks
        .iter()
        .filter_map(|one| Some((one.at_cm.as_ref()?.value, one.wanted_mmhg.as_ref()?.value)))
        .collect();
    let lines = plot(
        &[Series { sign: '●', points: wanted, joined: false }],
        page.width().min(76),
        7,
        "cm",
        "mmHg wanted",
    );
    page.gap();
    for line in lines {
        page.line(&line);
    }
}
