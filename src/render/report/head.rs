//! Owns the head of the terminal report: client, limb and dates, then the one decision.

use crate::document::{Block, Entry};
use crate::render::sheet::sentence;
use crate::report::Report;

/// Client, limb, dates; outcome, next step, who acts.
pub(super) fn head(report: &Report) -> Vec<Block> {
    let record = &report.record;
    let decision = &report.decision;
    let by = record.measured_by.as_ref().map(|by| format!(" by {by}")).unwrap_or_default();
    let mut blocks = vec![Block::text(format!(
        "{} \u{b7} {} \u{b7} measured {}{by} \u{b7} checked {}",
        record.client,
        record.limb.to_uppercase(),
        record.measured_on,
        report.today
    ))];
    for lowered in &report.rules.lowered {
        blocks.push(Block::entry("RULES LOWERED", lowered.clone()));
    }
    let word = decision.outcome.map_or_else(|| "NO OUTCOME".to_owned(), |one| one.spoken().to_uppercase());
    let mut entries = vec![Entry::new(word, decision.reason.clone())];
    if !decision.next.is_empty() {
        entries.push(Entry::new("Next", decision.next.clone()));
    }
    let who = decision.who_acts();
    if !who.is_empty() {
        entries.push(Entry::new("Who acts", who));
    }
    if !decision.also.is_empty() {
        let also: Vec<String> = decision.also.iter().map(|one| one.spoken().to_lowercase()).collect();
        entries.push(Entry::new("Also holds", also.join(", ")));
    }
    if let Some(prescribed) = &report.prescribed {
        entries.push(Entry::new("Prescribed", prescribed.clone()));
    }
    for leg in &report.arterial.legs {
        let side = report.limbs.get(leg.limb).map(|limb| format!(", {}", limb.printed)).unwrap_or_default();
        // Each value carries its date.
        let words = if leg.words.is_empty() { String::new() } else { format!(": {}", leg.words) };
        let values = leg.values.join("; ");
        entries.push(Entry::new(format!("Arterial{side}"), format!("{values}{words}")));
    }
    for limb in &report.limbs {
        for need in &limb.needs {
            let side = if report.limbs.len() > 1 { format!(", {}", limb.printed) } else { String::new() };
            entries.push(Entry::new(format!("Needed{side}"), sentence(need)));
        }
    }
    blocks.push(Block::Entries(entries));
    blocks
}
