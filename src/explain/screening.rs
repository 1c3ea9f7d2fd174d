//! Owns the page of every screening question.

use super::of_rules::limbs;
use crate::document::{Block, Entry};
use crate::rules::{ItemRule, Rules};

/// Every question, group by group, as the rules in use have them.
pub(super) fn blocks(rules: &Rules) -> Vec<Block> {
    let mut blocks = vec![
        Block::heading(format!("Screening questions: {}", rules.label)),
        Block::text(
            "An open or unknown answer is never a pass. A stop cannot be cleared; it ends when the answer changes.",
        ),
    ];
    for group in &rules.groups {
        let per_side = if group.per_side { ", for each side" } else { "" };
        blocks.push(Block::heading(group.id.word()));
        blocks.push(Block::text(format!("{} Holds for {}{per_side}.", group.question, group.valid.spoken())));
        blocks.push(Block::Entries(rules.group(group.id).map(of).collect()));
    }
    let others: Vec<Entry> = rules.items.iter().filter(|item| item.group.is_none()).map(of).collect();
    if !others.is_empty() {
        blocks.push(Block::heading("judged, not asked"));
        blocks.push(Block::Entries(others));
    }
    blocks.push(Block::heading("answered under observed"));
    blocks.push(Block::Entries(
        rules
            .observed
            .iter()
            .map(|rule| Entry::new(&rule.key, format!("{} Of {}.", rule.question, limbs(rule.limbs))))
            .collect(),
    ));
    blocks
}

fn of(item: &ItemRule) -> Entry {
    let mut entry = Entry::new(
        &item.id,
        format!(
            "{} ({}, {}, {})",
            item.condition,
            item.severity.word(),
            item.urgency.word(),
            limbs(item.limbs)
        ),
    );
    if let Some(help) = &item.help {
        entry = entry.and(help.clone());
    }
    entry
}
