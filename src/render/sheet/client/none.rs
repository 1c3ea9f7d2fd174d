//! Owns the client's pages without a garment, worded by urgency.

use super::super::language::Texts;
use super::matters::{Matter, matters, next, phone};
use super::warnings::{off, signs};
use crate::document::{Blank, Block, Weight};
use crate::report::Report;
use crate::rules::Urgency;

/// The title, which is the sentence of what cannot wait, and the rest.
pub(super) fn none(report: &Report, texts: &Texts) -> (String, Vec<Block>) {
    let all = matters(report, texts);
    let urgent = all.first().is_some_and(|first| first.urgency <= Urgency::SameDay);
    let emergency = all.first().is_some_and(|first| first.urgency == Urgency::Emergency);
    let mut rest = all.iter();
    let title = if urgent {
        rest.next().map(|first| first.say.clone()).unwrap_or_default()
    } else {
        texts.text("title-none").to_owned()
    };
    let about = match report.record.limb.as_str() {
        "both arms" => texts.text("about-both-arms").to_owned(),
        "both legs" => texts.text("about-both-legs").to_owned(),
        limb => texts.filled("about", &[("{limb}", texts.limb(limb))]),
    };
    let why: Vec<String> = rest.map(|one| one.say.clone()).collect();
    let mut blocks = Vec::new();
    if emergency {
        blocks.push(Block::lead(texts.text("show")));
    }
    blocks.push(worn_now(&all, texts, false));
    blocks.push(Block::text(about));
    if !why.is_empty() {
        let title = texts.text(if urgent { "also" } else { "why" });
        let weight = if urgent { Weight::Thin } else { Weight::Thick };
        blocks.push(Block::frame(weight, title, vec![Block::List(why)]));
    }
    blocks.push(Block::text(texts.text("none-yet")));
    if !emergency {
        blocks.push(Block::heading(texts.text("happens")));
        blocks.push(Block::text(next(report, texts)));
    }
    let by = report.decision.by.as_deref().map(|by| texts.day(by));
    let by =
        by.map_or_else(|| Blank::new(texts.text("by-day")), |day| Blank::filled(texts.text("by-day"), day));
    let mut rows = vec![vec![Blank::new(texts.text("call")), Blank::new(phone(report, texts))]];
    if !urgent {
        rows.push(vec![by, Blank::new(texts.text("next-visit"))]);
    }
    rows.push(vec![Blank::new(texts.text("answer"))]);
    blocks.push(Block::Blanks(rows));
    if !emergency {
        let mut inside = vec![Block::strong(texts.text("signs-off")), off(report, texts)];
        inside.extend(signs(texts));
        blocks.push(Block::frame(Weight::Thin, texts.text("signs-title"), inside));
    }
    (title, blocks)
}

/// The one advice about a garment already worn: the strongest of all that hold; `why` where the page says it nowhere
/// else.
pub(super) fn worn_now(all: &[Matter], texts: &Texts, why: bool) -> Block {
    let strongest = all.iter().fold(None::<&Matter>, |best, one| match best {
        Some(best) if best.off >= one.off => Some(best),
        _ => Some(one),
    });
    let advice = strongest.map(|one| one.worn.clone()).unwrap_or_default();
    let mut inside = vec![Block::lead(advice)];
    if why {
        inside.extend(all.iter().map(|one| Block::text(one.say.clone())));
    }
    Block::frame(Weight::Thick, texts.text("now-title"), inside)
}
