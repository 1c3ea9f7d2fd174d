//! Owns the order of the terminal report.

use super::{along, findings, head, pattern, screening, sizes, volume};
use crate::document::Block;
use crate::render::sheet::{ranking, sentence};
use crate::render::text;
use crate::report::Report;

/// The report for a terminal of `width` columns, without colour.
pub fn terminal_report(report: &Report, width: usize) -> String {
    text::terminal(&blocks(report, width), width)
}

fn blocks(report: &Report, width: usize) -> Vec<Block> {
    let mut blocks = head::head(report);
    blocks.extend(findings::findings(report));
    blocks.extend(ranking(report));
    for limb in &report.limbs {
        for chart_at in limb.ranking.iter().map(|one| one.chart) {
            blocks.extend(sizes::chart(report, limb, chart_at, width));
            blocks.extend(along::of_chart(report, limb, chart_at));
        }
        blocks.extend(along::of_garments(report, limb));
    }
    blocks.extend(pattern::pattern(report));
    blocks.extend(volume::volume(report));
    blocks.extend(screening::screening(report));
    blocks.push(Block::heading("Limits"));
    let limits: Vec<String> = report.limits.iter().map(|one| sentence(one)).collect();
    blocks.push(Block::text(limits.join(" ")));
    blocks.push(Block::text(format!("{} {}", report.tool.name, report.tool.version)));
    blocks
}
