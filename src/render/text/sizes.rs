//! Owns the table of sizes in the terminal report.

use super::Page;
use crate::report::{Chart, Measure};

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
    let mut head = vec!["size".to_owned()];
    head.extend(first.iter().flat_map(|size| &size.measures).map(|one| {
        format!(
            "{}\n{}",
            one.measure.replace('-', " "),
            one.girth_cm.as_ref().map_or("?", |girth| &girth.text)
        )
    }));
    head.push("comes to".to_owned());
    let rows: Vec<Vec<String>> = chart
        .sizes
        .iter()
        .map(|size| {
            let picked = chart.size.as_ref() == Some(&size.size);
            let nearest = chart.nearest.as_ref() == Some(&size.size);
            let mut row = vec![format!("{}{}", if picked { "→ " } else { "" }, size.size)];
            row.extend(size.measures.iter().map(cell));
            let lengths_fail = size.lengths.iter().any(|one| one.inside == Some(false));
            row.push(match (size.verdict, size.reversed) {
                ("inside", Some(true)) => "rises".to_owned(),
                ("inside", _) if picked => "picked".to_owned(),
                ("inside", _) => "holds".to_owned(),
                ("not-judged", _) => "not judged".to_owned(),
                _ if nearest => "nearest".to_owned(),
                _ if lengths_fail && size.measures.iter().all(|one| one.verdict != "outside") => {
                    "no length".to_owned()
                }
                _ => "outside".to_owned(),
            });
            row
        })
        .collect();
    page.table(&head, &rows, &[]);
    page.paragraph("Cells: room in cm to the nearer end of the range; `edge` is close to it.");
    for one in first.iter().flat_map(|size| &size.lengths) {
        let length =
            one.length_cm.as_ref().map_or("not measured".to_owned(), |length| format!("{} cm", length.text));
        page.paragraph(&format!("Length {}: {length}; variants in cm: {}", one.between, one.ranges_words));
    }
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
