//! Owns the order of the sheet: page 1 that stands alone, the annex, the client's pages.

use super::language::Texts;
use super::subject::{forbids, parts};
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
    blocks.extend(tables(report));
    blocks.push(Block::Together(closing::signatures(report)));
    blocks
}

/// The tables of marks: beside one another for two limbs, under one another for the parts of a set; one
/// limb with its drawing, unless nothing is fitted.
fn tables(report: &Report) -> Vec<Block> {
    let all = parts(report);
    if report.limbs.len() > 1 {
        let of = |at: usize| {
            let here = all.iter().filter(|part| part.limb_at == at);
            here.map(|part| marks::marks(part, true)).collect()
        };
        return vec![Block::beside((1, of(0)), (1, of(1)))];
    }
    let mut blocks: Vec<Block> = all.iter().map(|part| marks::marks(part, false)).collect();
    if !forbids(report) {
        blocks.extend(drawings(report));
    }
    blocks
}

/// Height that a limb's length is drawn at, points.
const TALL: f64 = 98.0;
/// The same on the sheet of a set, whose parts have tables of their own.
const LOW: f64 = 66.0;

/// One drawing of each limb; the part of a set that reaches farthest is drawn with its pressures.
fn drawings(report: &Report) -> Vec<Block> {
    let all = parts(report);
    let places = 0..report.limbs.len();
    places
        .filter_map(|at| {
            let here = all.iter().filter(|part| part.limb_at == at);
            here.max_by_key(|part| part.pressure.map_or(0, |one| one.marks.len()))
        })
        .filter_map(|part| plot::plot(part, if all.len() > report.limbs.len() { LOW } else { TALL }))
        .map(Block::Figure)
        .collect()
}

/// The annex.
fn behind(report: &Report) -> Vec<Block> {
    let mut blocks = Vec::new();
    blocks.extend(closing::trial(report));
    blocks.extend(annex::seen(report));
    blocks.extend(annex::fall(report));
    if report.limbs.len() > 1 || forbids(report) {
        blocks.extend(drawings(report));
    }
    blocks.extend(super::ranking::ranking(report));
    blocks.extend(annex::others(report));
    blocks.extend(annex::volume(report));
    blocks.extend(annex::answers(report));
    blocks.extend(annex::limits(report));
    blocks
}
