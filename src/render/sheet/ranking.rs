//! Owns the charts of a run in one table, the best first, with what differs where two serve alike.

use super::subject::forbids;
use super::wording::sentence;
use crate::document::{Block, Column, Row, Table};
use crate::report::{LimbBlock, RankedBlock, Report};
use crate::words::{self, capital};

/// Every part of a limb that has several charts, in one table; nothing where none has.
pub(in crate::render) fn ranking(report: &Report) -> Vec<Block> {
    let contested = |limb: &LimbBlock, one: &RankedBlock| {
        limb.ranking.iter().filter(|other| other.part == one.part).count() > 1
    };
    let all: Vec<(&LimbBlock, &RankedBlock)> = report
        .limbs
        .iter()
        .flat_map(|limb| limb.ranking.iter().map(move |one| (limb, one)))
        .filter(|(limb, one)| contested(limb, one))
        .collect();
    if all.is_empty() {
        return Vec::new();
    }
    let limbs = report.limbs.len() > 1;
    let parts = report.limbs.iter().any(|limb| limb.ranking.iter().any(|one| one.part > 0));
    let only = if forbids(report) { "Figures only, do not fit. " } else { "" };
    let mut columns = Vec::new();
    if limbs {
        columns.push(Column::words("Limb"));
    }
    if parts {
        columns.push(Column::words("Part"));
    }
    columns.extend(["Rank", "Chart", "Size", "Result", "Least margin, cm", "Fall"].map(Column::words));
    let mut table = Table::new(format!("{only}The best chart first."), columns);
    let mut ties = Vec::new();
    for (limb, one) in all {
        let Some(chart) = limb.charts.get(one.chart) else { continue };
        let mut cells = Vec::new();
        if limbs {
            cells.push(limb.printed.clone());
        }
        if parts {
            cells.push((one.part + 1).to_string());
        }
        cells.extend([
            one.rank.to_string(),
            chart.printed.clone(),
            one.shown.clone(),
            one.result.clone(),
            margin(one),
            one.fall.unwrap_or("not estimated").to_owned(),
        ]);
        table.rows.push(Row { cells, strong: one.rank == 1 });
        let of = if limbs { format!("{}: ", capital(&limb.printed)) } else { String::new() };
        ties.extend(one.tie.as_ref().map(|tie| Block::text(format!("{of}{}", sentence(tie)))));
    }
    let mut blocks = vec![Block::heading("Charts compared"), Block::Table(table)];
    blocks.push(Block::text(
        "Ranked by what stands against a chart, then by the least margin of the size shown, then as given.",
    ));
    blocks.extend(ties);
    blocks
}

/// `0.9 at the wrist`, `0.6 loose at the wrist`.
fn margin(one: &RankedBlock) -> String {
    let Some(figure) = &one.margin_cm else { return "none".to_owned() };
    let at = one.margin_at.map_or_else(String::new, |landmark| format!(" {}", words::at(landmark)));
    match one.direction {
        Some(direction) => format!("{} {direction}{at}", figure.text.trim_start_matches(['-', '\u{2212}'])),
        None => format!("{}{at}", figure.text),
    }
}
