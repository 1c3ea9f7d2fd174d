//! Owns the table of sizes in the terminal report.

use super::Page;
use crate::report::{Chart, Measure, Size};

/// Prints one chart: every size against every measure; under a stop as figures only.
pub(super) fn print(page: &mut Page, chart: &Chart, stop: bool) {
    page.heading(&chart.label);
    let variant = chart.variant.as_ref().map(|variant| format!(" (length: {variant})")).unwrap_or_default();
    let outcome = if stop { "FIGURES ONLY, DO NOT FIT".to_owned() } else { chart.outcome.to_uppercase() };
    page.led(&format!("{outcome}: "), &format!("{}{variant}", chart.reason));
    let style = chart.offered.style.as_ref().map(|style| format!("{style}, ")).unwrap_or_default();
    page.paragraph(&format!("Offered: {style}{}", chart.offered.words));
    if chart.sizes.is_empty() {
        return;
    }
    let first = chart.sizes.first();
    let measures = first.map_or(0, |size| size.measures.len());
    if measures > chart.sizes.len() {
        by_measure(page, chart);
    } else {
        by_size(page, chart);
    }
    page.paragraph("Cells: room in cm to the nearer end of the range; `edge` is close to it.");
    for one in first.iter().flat_map(|size| &size.lengths) {
        let length =
            one.length_cm.as_ref().map_or("not measured".to_owned(), |length| format!("{} cm", length.text));
        page.paragraph(&format!("Length {}: {length}; variants in cm: {}", one.between, one.ranges_words));
    }
}

/// A row for each size.
fn by_size(page: &mut Page, chart: &Chart) {
    let mut head = vec!["size".to_owned()];
    head.extend(
        chart
            .sizes
            .first()
            .iter()
            .flat_map(|size| &size.measures)
            .map(|one| format!("{}\n{}", one.measure.replace('-', " "), girth(one))),
    );
    head.push("comes to".to_owned());
    let rows: Vec<Vec<String>> = chart
        .sizes
        .iter()
        .map(|size| {
            let mut row = vec![name(chart, size)];
            row.extend(size.measures.iter().map(cell));
            row.push(comes_to(chart, size));
            row
        })
        .collect();
    page.table(&head, &rows, &[]);
}

/// A row for each measure, where there are more measures than sizes.
fn by_measure(page: &mut Page, chart: &Chart) {
    let mut head = vec!["mark".to_owned(), "girth".to_owned()];
    head.extend(chart.sizes.iter().map(|size| name(chart, size)));
    let measures = chart.sizes.first().iter().flat_map(|size| &size.measures).collect::<Vec<_>>();
    let mut rows: Vec<Vec<String>> = measures
        .iter()
        .enumerate()
        .map(|(at, one)| {
            let mut row = vec![one.measure.replace('-', " "), girth(one)];
            row.extend(chart.sizes.iter().map(|size| size.measures.get(at).map(cell).unwrap_or_default()));
            row
        })
        .collect();
    let mut last = vec!["comes to".to_owned(), String::new()];
    last.extend(chart.sizes.iter().map(|size| comes_to(chart, size)));
    rows.push(last);
    page.table(&head, &rows, &[1]);
}

fn name(chart: &Chart, size: &Size) -> String {
    let picked = chart.size.as_ref() == Some(&size.size);
    format!("{}{}", if picked { "→ " } else { "" }, size.size)
}

fn girth(one: &Measure) -> String {
    one.girth_cm.as_ref().map_or_else(|| "?".to_owned(), |girth| girth.text.clone())
}

fn comes_to(chart: &Chart, size: &Size) -> String {
    let lengths_fail = size.lengths.iter().any(|one| one.inside == Some(false));
    let girths_hold = size.measures.iter().all(|one| one.verdict != "outside");
    let word = match (size.verdict, size.reversed) {
        ("inside", Some(true)) => "rises",
        _ if chart.size.as_ref() == Some(&size.size) => "picked",
        ("inside", _) => "holds",
        ("not-judged", _) => "not judged",
        _ if chart.nearest.as_ref() == Some(&size.size) => "nearest",
        _ if lengths_fail && girths_hold => "no length",
        _ => "outside",
    };
    word.to_owned()
}

fn cell(one: &Measure) -> String {
    let amount = one.margin_cm.as_ref().map(|margin| margin.text.trim_start_matches('\u{2212}').to_owned());
    match (amount, one.direction, one.verdict) {
        (None, ..) => "?".to_owned(),
        (Some(amount), Some(direction), _) => format!("{amount} {direction}"),
        (Some(amount), None, "edge") => format!("{amount} edge"),
        (Some(amount), None, _) => amount,
    }
}
