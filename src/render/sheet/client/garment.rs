//! Owns the client's pages with a garment.

use super::super::language::Texts;
use super::super::subject::parts;
use super::matters::{against_worn, phone};
use super::none::worn_now;
use super::warnings::{off, signs};
use crate::anatomy::Limb;
use crate::document::{Blank, Block, Tick, Weight};
use crate::report::Report;
use crate::words::capital;

/// What to wear, when, how, and when not.
pub(super) fn garment(report: &Report, texts: &Texts) -> Vec<Block> {
    let arm = report.limbs.iter().any(|limb| limb.limb == Limb::Arm);
    let all = parts(report);
    let mut worn = Vec::new();
    for part in &all {
        let style = part.chart.and_then(|chart| chart.style.clone());
        let style =
            style.map_or_else(|| texts.text("style-unknown").to_owned(), |one| texts.style(&one).to_owned());
        let said = texts.filled(
            "one-garment",
            &[
                ("{style}", &style),
                ("{limb}", texts.limb(&part.limb.printed)),
                ("{size}", &part.size_words()),
            ],
        );
        worn.push(capital(&said));
    }
    let several = all.len() > 1;
    let mut blocks = vec![Block::lead(worn.join(" "))];
    let against = against_worn(report, texts);
    if !against.is_empty() {
        blocks.push(worn_now(&against, texts, true));
    }
    blocks.push(Block::text(texts.text(if several { "wear-only-several" } else { "wear-only" })));
    let row = |keys: &[&str]| keys.iter().map(|key| Blank::new(texts.text(key))).collect::<Vec<_>>();
    blocks.push(Block::Blanks(vec![row(&["have", "given"])]));
    let mut warned = vec![Block::strong(texts.text("off-now")), off(report, texts)];
    warned.push(Block::strong(texts.text("numb")));
    warned.push(Block::text(texts.text("alone")));
    warned.extend(signs(texts));
    warned.push(Block::Blanks(vec![vec![Blank::new(texts.text("call")), Blank::new(phone(report, texts))]]));
    blocks.push(Block::frame(Weight::Thick, texts.text("off-title"), warned));
    blocks.push(Block::Together(vec![
        Block::heading(texts.text("on-title")),
        Block::list(texts.list(if arm { "on-arm" } else { "on-leg" }).iter().cloned()),
    ]));
    blocks.push(Block::Together(vec![
        Block::heading(texts.text("taking-title")),
        Block::list(texts.list("taking").iter().cloned()),
        Block::Ticks { boxes: Vec::new(), items: vec![Tick::open(texts.text("shown"))] },
    ]));
    let mut when = texts.list("when").to_vec();
    when.push(texts.text("sleep").to_owned());
    blocks.push(Block::Together(vec![
        Block::heading(texts.text("when-title")),
        Block::List(when),
        Block::Blanks(vec![row(&["night"])]),
    ]));
    blocks.push(Block::heading(texts.text("care-title")));
    blocks.push(Block::list(texts.list("care").iter().cloned()));
    if !report.record.shown.is_empty() {
        blocks.push(Block::heading(texts.text("routine-title")));
        blocks.push(Block::list(texts.list("routine").iter().cloned()));
        blocks.push(Block::Blanks(vec![row(&["how-long", "how-often"])]));
    }
    blocks.push(Block::heading(texts.text("next-title")));
    blocks.push(Block::text(format!("{} {}", texts.text("next-visits"), texts.text("tell"))));
    blocks.push(Block::Blanks(vec![row(&["next-visit", "measure-again"])]));
    blocks
}
