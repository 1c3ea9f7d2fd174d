//! Owns the order of the sheet: page 1 that stands alone, the annex, the client's pages.

use super::language::Texts;
use super::subject::{Part, parts};
use super::{Language, about, annex, band, clear, client, closing, made, marks, order_box, plot};
use crate::document::{Block, Head, Leaf, Reader, Sheet, hold_units};
use crate::report::Report;

/// The sheet of a report, the client's pages in a language.
pub fn sheet(report: &Report, language: Language) -> Sheet {
    let record = &report.record;
    let limb = record.limb.to_uppercase();
    let state = band::state(report.decision.outcome);
    let head = Head {
        bold: format!("{} \u{b7} {limb} \u{b7} {state}", record.client),
        plain: format!("measured {} \u{b7} printed {}", record.measured_on, report.today),
    };
    let leaf = |title: String, blocks: Vec<Block>| Leaf {
        reader: Reader::Fitter,
        head: head.clone(),
        title,
        blocks,
        language: "en-GB".to_owned(),
        numbered: "page {page} of {pages}".to_owned(),
        apart: false,
    };
    let mut leaves = vec![leaf(format!("Fitting sheet: {}", record.limb), first(report))];
    let made = made::made(report);
    if !made.is_empty() {
        leaves.push(leaf("Made-to-measure order".to_owned(), made));
    }
    leaves.push(leaf("Annex for the file".to_owned(), behind(report)));
    leaves.push(client::client(report, &Texts::of(language)));
    let mut sheet = Sheet {
        title: head.bold.clone(),
        leaves,
        made_on: report.today.clone(),
        made_by: format!("{} {}", report.tool.name, report.tool.version),
    };
    hold_units(&mut sheet);
    sheet
}

/// Page 1: what is decided, ordered, cleared, measured and signed.
fn first(report: &Report) -> Vec<Block> {
    let square = Block::Square { label: "client\u{2019}s label".to_owned(), lines: 6 };
    let mut blocks = vec![
        Block::beside((8, vec![band::band(report)]), (3, vec![square])),
        Block::beside((1, about::about(report)), (1, about::values(report))),
        order_box::order(report),
    ];
    blocks.extend(clear::clear(report));
    blocks.push(Block::heading("Mark by mark"));
    blocks.extend(tables(&parts(report)));
    blocks.push(Block::Together(closing::signatures(report)));
    blocks
}

/// Tables and drawings: beside one another for two limbs, under one another for the parts of a set.
fn tables(all: &[Part<'_>]) -> Vec<Block> {
    let several = all.len() > 1;
    let two_limbs = several && all.iter().any(|part| part.limb_at > 0);
    let mut drawn = Vec::new();
    let mut blocks = Vec::new();
    if two_limbs {
        let mut columns = Vec::new();
        for part in all {
            let mut inside = vec![marks::marks(part, true)];
            if !drawn.contains(&part.limb_at) {
                drawn.push(part.limb_at);
                inside.extend(plot::plot(part, true).map(Block::Figure));
            }
            columns.push((part.limb_at, inside));
        }
        let of = |limb: usize| {
            columns.iter().filter(|(at, _)| *at == limb).flat_map(|(_, blocks)| blocks.clone()).collect()
        };
        blocks.push(Block::beside((1, of(0)), (1, of(1))));
        return blocks;
    }
    for part in all {
        blocks.push(marks::marks(part, false));
    }
    // One drawing of the limb; the part that reaches farthest is drawn with its pressures.
    let widest = all.iter().max_by_key(|part| part.pressure.map_or(0, |one| one.marks.len()));
    blocks.extend(widest.and_then(|part| plot::plot(part, false)).map(Block::Figure));
    blocks
}

/// The annex.
fn behind(report: &Report) -> Vec<Block> {
    let mut blocks = Vec::new();
    blocks.extend(closing::trial(report));
    blocks.extend(annex::seen(report));
    blocks.extend(annex::fall(report));
    blocks.extend(annex::others(report));
    blocks.extend(annex::volume(report));
    blocks.extend(annex::answers(report));
    blocks.extend(annex::limits(report));
    blocks
}
