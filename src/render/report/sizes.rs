//! Owns the table of sizes in the terminal report.

use crate::assessment::Outcome;
use crate::document::{Block, Column, Entry, Table};
use crate::render::sheet::{amount, sentence};
use crate::report::{ChartBlock, LimbBlock, MeasureBlock, Report, SizeBlock};

/// One chart: its line, then every size against every measure.
pub(super) fn chart(report: &Report, limb: &LimbBlock, chart_at: usize, width: usize) -> Vec<Block> {
    let Some(chart) = limb.charts.get(chart_at) else { return Vec::new() };
    let of = if report.limbs.len() > 1 { format!("{}: ", limb.printed) } else { String::new() };
    let part = if limb.charts.iter().any(|one| one.part != chart.part) {
        format!(", part {}", chart.part + 1)
    } else {
        String::new()
    };
    let mut blocks = vec![Block::heading(format!("{of}{}{part}", chart.printed))];
    let outcome = if report.decision.outcome.is_some_and(Outcome::forbids_fitting) {
        "FIGURES ONLY, DO NOT FIT".to_owned()
    } else if chart.outcome == Outcome::TrialFitting && report.decision.outcome != Some(Outcome::TrialFitting)
    {
        // The chart by itself would do; the report does not invite to it.
        "NO FITTING YET".to_owned()
    } else {
        chart.outcome.spoken().to_uppercase()
    };
    let mut said = vec![Entry::new(outcome, sentence(&chart.line))];
    said.extend(offered(chart).map(|offered| Entry::new("Offered", offered)));
    blocks.push(Block::Entries(said));
    if chart.sizes.is_empty() {
        return blocks;
    }
    let measures = chart.sizes.first().map_or(0, |size| size.measures.len());
    // Sizes across while their columns fit, else down.
    let across = measures > chart.sizes.len() || (chart.sizes.len() + 2) * 11 <= width && measures > 4;
    blocks.push(Block::Table(if across { by_measure(chart) } else { by_size(chart) }));
    if chart.verdict == "not-judged" && chart.sizes.iter().any(|size| size.verdict == "inside") {
        blocks
            .push(Block::text("These girths are not used for an order: measure again once it has settled."));
    }
    blocks.push(Block::text("Margins in cm to the nearer end of the range; `close` is under 0.5 cm."));
    if let Some(note) = &chart.length_note {
        blocks.push(Block::entry("Length", sentence(note)));
    }
    for own in &chart.measured {
        if let Some(size) = chart.sizes.get(own.size) {
            blocks.push(Block::entry(
                "Measured",
                format!("the flat widths of size {} are those of {}.", size.size, own.file),
            ));
        }
    }
    if let Some(paste) = &chart.paste {
        blocks.push(Block::text(
            "To paste into a file of its own, fill in and give to the same command as well:",
        ));
        blocks.push(Block::Verbatim(paste.clone()));
    }
    if let (Some(chance), Some(other)) =
        (&chart.same_again_chance, chart.runner_up.and_then(|at| chart.sizes.get(at)))
        && chance.value < 0.9
    {
        blocks.push(Block::entry(
            "Same size again",
            format!("chance {}; else most likely size {}.", chance.text, other.size),
        ));
    }
    blocks
}

fn offered(chart: &ChartBlock) -> Option<String> {
    let mut said = Vec::new();
    said.extend(chart.style.clone());
    said.extend(chart.claim.as_ref().map(|claim| claim.printed.clone()));
    said.extend(chart.variant.as_ref().map(|one| format!("length {one}")));
    (!said.is_empty()).then(|| said.join(", "))
}

/// A row for each size.
fn by_size(chart: &ChartBlock) -> Table {
    let mut columns = vec![Column::words("size")];
    for one in chart.sizes.first().iter().flat_map(|size| &size.measures) {
        columns.push(Column::words(format!("{} {}", one.measure.replace('-', " "), girth(one))));
    }
    columns.push(Column::words("result"));
    let mut table = Table::new("", columns);
    for (at, size) in chart.sizes.iter().enumerate() {
        let mut row = vec![name(chart, at, size)];
        row.extend(size.measures.iter().map(cell));
        row.push(result(chart, at, size).to_owned());
        table.push(row);
    }
    table
}

/// A row for each measure.
fn by_measure(chart: &ChartBlock) -> Table {
    let mut columns = vec![Column::words("mark"), Column::numbers("girth", "cm")];
    columns.extend(chart.sizes.iter().enumerate().map(|(at, size)| Column::words(name(chart, at, size))));
    let mut table = Table::new("", columns);
    let measures = chart.sizes.first().iter().flat_map(|size| &size.measures).collect::<Vec<_>>();
    for (at, one) in measures.iter().enumerate() {
        let mut row = vec![one.measure.replace('-', " "), girth(one)];
        row.extend(chart.sizes.iter().map(|size| size.measures.get(at).map(cell).unwrap_or_default()));
        table.push(row);
    }
    let mut last = vec!["result".to_owned(), String::new()];
    last.extend(chart.sizes.iter().enumerate().map(|(at, size)| result(chart, at, size).to_owned()));
    table.push(last);
    table
}

fn name(chart: &ChartBlock, at: usize, size: &SizeBlock) -> String {
    format!("{}{}", if chart.size == Some(at) { "\u{2192} " } else { "" }, size.size)
}

fn girth(one: &MeasureBlock) -> String {
    one.girth_cm.as_ref().map_or_else(|| "?".to_owned(), |girth| girth.text.clone())
}

/// What a size comes out as, one word.
fn result(chart: &ChartBlock, at: usize, size: &SizeBlock) -> &'static str {
    if chart.size == Some(at) {
        return "picked";
    }
    if size.reversed {
        return "rises";
    }
    match size.verdict {
        "inside" if chart.verdict == "not-judged" => "not judged",
        "inside" => "takes",
        "open" => "open",
        _ if chart.between.contains(&at) => "between",
        _ if chart.nearest == Some(at) => "nearest",
        other => other,
    }
}

fn cell(one: &MeasureBlock) -> String {
    match (one.margin_cm.is_some(), one.direction, one.verdict) {
        (false, ..) if one.girth_cm.is_none() => "?".to_owned(),
        (false, ..) => "\u{2013}".to_owned(),
        (true, Some(direction), _) => format!("{} {direction}", amount(one)),
        (true, None, "close") => format!("{} close", amount(one)),
        (true, None, _) => amount(one),
    }
}
