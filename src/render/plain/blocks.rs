//! Owns each block as lines.

use super::table::table;
use super::wrap::{columns, wrap};
use crate::render::sheet::{Block, Tone, Weight};

/// The lines of blocks, `width` columns wide. Lines of one group stay on one page.
pub(super) fn groups(blocks: &[Block], width: usize) -> Vec<Vec<String>> {
    let mut groups: Vec<Vec<String>> = Vec::new();
    // A heading, or a sentence that leads to something, stays with what follows.
    let mut held: Vec<String> = Vec::new();
    for block in blocks {
        let mut found = one(block, width);
        if let Some(first) = found.first_mut() {
            let mut lines = std::mem::take(&mut held);
            lines.append(first);
            *first = lines;
        }
        if matches!(block, Block::Heading(_) | Block::Text(Tone::Strong, _)) {
            held = found.into_iter().flatten().collect();
        } else {
            groups.append(&mut found);
        }
    }
    if !held.is_empty() {
        groups.push(held);
    }
    groups
}

fn one(block: &Block, width: usize) -> Vec<Vec<String>> {
    match block {
        Block::Heading(title) => {
            let title = title.to_uppercase();
            let rule = "-".repeat(columns(&title).min(width));
            let mut lines = vec![String::new()];
            lines.extend(wrap(&title, width));
            lines.push(rule);
            vec![lines]
        }
        Block::Text(_, words) => vec![with_space(wrap(words, width))],
        Block::Keys(pairs) => {
            let names = pairs.iter().map(|(name, _)| columns(name)).max().unwrap_or_default() + 2;
            let lines = pairs
                .iter()
                .flat_map(|(name, value)| hang(&format!("{name}:"), names, value, width))
                .collect();
            vec![with_space(lines)]
        }
        Block::List(items) => spaced(items.iter().map(|item| hang("-", 2, item, width)).collect()),
        Block::Ticks { boxes, items } => {
            let label = if boxes.is_empty() {
                "[ ]".to_owned()
            } else {
                boxes.iter().map(|word| format!("[ ] {word}")).collect::<Vec<_>>().join("  ")
            };
            let indent = columns(&label) + 2;
            spaced(items.iter().map(|item| hang(&label, indent, item, width)).collect())
        }
        Block::Blanks(rows) => rows
            .iter()
            .map(|row| vec![String::new(), blanks(row, width)])
            .chain([vec![String::new()]])
            .collect(),
        Block::Table(shown) => table(shown, width),
        Block::Frame { weight, title, inside } => {
            let rule = match weight {
                Weight::Thin => "-",
                Weight::Thick => "*",
                Weight::Black => "#",
            }
            .repeat(width);
            let mut lines = vec![rule.clone()];
            lines.extend(wrap(&title.to_uppercase(), width - 4).iter().map(|line| format!("  {line}")));
            lines.push(String::new());
            let body = groups(inside, width - 4).into_iter().flatten();
            lines.extend(body.map(|line| if line.is_empty() { line } else { format!("  {line}") }));
            if lines.last().is_some_and(String::is_empty) {
                lines.pop();
            }
            lines.push(rule);
            lines.push(String::new());
            vec![lines]
        }
        // A line printer draws nothing; the words of the drawing stand for it.
        Block::Figure(scene) => vec![with_space(wrap(&scene.description, width))],
    }
}

fn with_space(mut lines: Vec<String>) -> Vec<String> {
    lines.push(String::new());
    lines
}

fn spaced(mut groups: Vec<Vec<String>>) -> Vec<Vec<String>> {
    if let Some(last) = groups.last_mut() {
        last.push(String::new());
    }
    groups
}

/// A label, and a text beside it whose further lines stand under its first.
fn hang(label: &str, indent: usize, text: &str, width: usize) -> Vec<String> {
    let body = wrap(text, width.saturating_sub(indent));
    body.iter()
        .enumerate()
        .map(|(place, line)| {
            let label = if place == 0 { label } else { "" };
            format!("{label}{}{line}", " ".repeat(indent.saturating_sub(columns(label))))
        })
        .collect()
}

fn blanks(row: &[String], width: usize) -> String {
    let share = (width + 2) / row.len().max(1) - 2;
    let each: Vec<String> = row
        .iter()
        .map(|label| {
            let label = label.replace('\u{a0}', " ");
            let rule = share.saturating_sub(columns(&label) + 1).max(3);
            format!("{label} {}", "_".repeat(rule))
        })
        .collect();
    each.join("  ")
}
