//! Owns the other sizes of a chart and the other charts: neighbours only, the rest in one line.

use super::super::subject::{Part, forbids, parts};
use super::super::wording::sentence;
use crate::anatomy::Landmark;
use crate::assessment::Outcome;
use crate::document::{Block, Column, Table};
use crate::report::{ChartBlock, Report, SizeBlock};
use crate::words::{self, capital};

/// The sizes beside the one shown, and the charts that were not taken.
pub(in super::super) fn others(report: &Report) -> Vec<Block> {
    let only = if forbids(report) { " Figures only, do not fit." } else { "" };
    let mut table = Table::new(
        format!("What else was looked at.{only}"),
        vec![Column::words("Chart"), Column::words("Size"), Column::words("Against the girths")],
    );
    for part in parts(report) {
        let of = of_limb(report, &part.limb.printed);
        neighbours(&part, &of, &mut table);
    }
    for limb in &report.limbs {
        let ranked = limb.ranking.iter().filter_map(|one| limb.charts.get(one.chart));
        for chart in ranked.filter(|chart| !chart.counted) {
            let of = of_limb(report, &limb.printed);
            let size = chart.size.and_then(|at| chart.sizes.get(at));
            let size = size.map_or_else(|| "none".to_owned(), |size| size.size.clone());
            table.push(vec![format!("{of}{}", chart.printed), size, line(report, chart)]);
        }
    }
    if table.rows.is_empty() {
        return Vec::new();
    }
    vec![Block::heading("Other sizes and charts"), Block::Table(table)]
}

/// The chart's one line; it is derived from the one decision and never invites where fitting is off.
fn line(report: &Report, chart: &ChartBlock) -> String {
    let invites =
        chart.outcome == Outcome::TrialFitting && report.decision.outcome != Some(Outcome::TrialFitting);
    let outcome =
        if forbids(report) || invites { String::new() } else { format!("{}: ", chart.outcome.spoken()) };
    format!("{outcome}{}", sentence(&chart.line))
}

/// The limb before its chart, where the report holds two.
fn of_limb(report: &Report, limb: &str) -> String {
    if report.limbs.len() > 1 { format!("{}: ", capital(limb)) } else { String::new() }
}

fn neighbours(part: &Part<'_>, of: &str, table: &mut Table) {
    let Some(chart) = part.chart else { return };
    let named = format!("{of}{}", chart.printed);
    let shown = part.size.and_then(|shown| chart.sizes.iter().position(|size| size.size == shown.size));
    let mut far = Vec::new();
    for (at, size) in chart.sizes.iter().enumerate() {
        if Some(at) == shown {
            continue;
        }
        let near = shown.is_some_and(|shown| at.abs_diff(shown) == 1);
        if near || size.verdict == "inside" {
            table.push(vec![named.clone(), size.size.clone(), against(size)]);
        } else {
            far.push(size.size.clone());
        }
    }
    if !far.is_empty() {
        table.push(vec![named, far.join(", "), "Farther away, or not judged.".to_owned()]);
    }
}

/// `1.2 too tight at the axilla and 1 other girth`.
fn against(size: &SizeBlock) -> String {
    let outside: Vec<_> = size.measures.iter().filter(|one| one.verdict == "outside").collect();
    let missing = size.measures.iter().filter(|one| one.verdict == "missing").count();
    let mut said: Vec<String> = outside
        .iter()
        .map(|one| {
            format!(
                "{} cm too {} {}",
                super::super::marks::amount(one),
                one.direction.unwrap_or("wide"),
                Landmark::parse_word(one.measure).map_or_else(String::new, words::at)
            )
        })
        .collect();
    if missing > 0 {
        said.push(format!("{} not measured", words::counted(missing, "girth", "girths")));
    }
    if size.reversed {
        let lead = if said.is_empty() { "takes every girth, but " } else { "" };
        said.push(format!("{lead}its pressure rises for certain"));
    }
    if said.is_empty() {
        "Takes every girth; a greater margin was found in the one shown.".to_owned()
    } else {
        sentence(&capital(&said.join("; ")))
    }
}
