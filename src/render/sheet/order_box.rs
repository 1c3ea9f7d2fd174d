//! Owns the order box: one line for each part and limb.

use super::subject::{Part, forbids, is_trial, parts};
use super::wording::{EMPTY, sentence};
use crate::assessment::Outcome;
use crate::document::{Block, Column, Room, Table, Weight};
use crate::report::{FindingRow, Report};
use crate::words::capital;

/// What would be ordered or tried; as figures only under a stop and under refer, while something is still
/// missing, and until the cause of harm by a garment in use is found.
pub(super) fn order(report: &Report) -> Block {
    let stopped = |one: &FindingRow| {
        ["worn-feeling", "worn-reading", "wear-harm"].contains(&one.id.as_str()) && !one.cleared
    };
    let only = forbids(report)
        || report.decision.outcome == Some(Outcome::Incomplete)
        || report.findings.iter().any(stopped);
    let title = if only { "Figures only: nothing is ordered from this sheet" } else { "Order" };
    let mut columns = vec![
        Column::words("Limb").at_least(15),
        Column::words("Garment"),
        Column::words("Size").at_least(10),
        Column::words("Class and band"),
    ];
    if !only {
        columns.push(Column::words("Quantity").at_least(10));
        columns.push(Column::words("Article").at_least(10));
        columns.push(Column::words("Lot").at_least(5));
    }
    let mut table = Table::new("", columns);
    table.room = if only { Room::None } else { Room::Writing };
    let all = parts(report);
    for part in &all {
        let mut cells = vec![capital(&part.limb.printed), garment(part), size(part), class(part)];
        if !only {
            cells.extend([String::new(), String::new(), String::new()]);
        }
        table.push(cells);
    }
    let mut inside = vec![Block::Table(table)];
    let lines: Vec<String> = all
        .iter()
        .filter_map(|part| part.chart.map(|chart| (part, chart)))
        .map(|(part, chart)| {
            let limb = if report.limbs.len() > 1 {
                format!("{}, ", capital(&part.limb.printed))
            } else {
                String::new()
            };
            let lead = if all.len() > 1 { format!("{limb}{}: ", chart.printed) } else { String::new() };
            format!("{}{}", capital(&lead), sentence(&chart.line))
        })
        .collect();
    // Under a trial fitting the band has said what the lines of several say.
    if !(lines.is_empty() || all.len() > 1 && is_trial(report)) {
        inside.push(Block::small(lines.join(" ")));
    }
    Block::frame(Weight::Thin, title, inside)
}

fn garment(part: &Part<'_>) -> String {
    let style =
        |chart: &crate::report::ChartBlock| chart.style.clone().unwrap_or_else(|| "garment".to_owned());
    match part.chart {
        None => "no chart was given".to_owned(),
        Some(chart) if part.is_made() && !part.is_chosen() => format!("{}, made to measure", style(chart)),
        Some(chart) if chart.printed.contains(style(chart).as_str()) => chart.printed.clone(),
        Some(chart) => format!("{}: {}", style(chart), chart.printed),
    }
}

fn size(part: &Part<'_>) -> String {
    if part.is_made() && !part.is_chosen() { "by the order page".to_owned() } else { part.size_words() }
}

fn class(part: &Part<'_>) -> String {
    let claim = part.chart.and_then(|chart| chart.claim.as_ref());
    claim.map_or_else(|| EMPTY.to_owned(), |claim| claim.printed.clone())
}
