//! Owns each block as lines.

use super::bars::bars;
use super::columns::{columns, freed, hang, wrap};
use super::look::Look;
use super::table::table;
use crate::document::{Blank, Block, Entry, Figure, Letters, Tick, Tone, Weight};

/// Widest column of names before their values.
const WIDEST_NAME: usize = 28;

/// The lines of blocks, `width` columns wide. Lines of one group stay on one page.
pub(super) fn groups(blocks: &[Block], width: usize, look: Look) -> Vec<Vec<String>> {
    let mut groups: Vec<Vec<String>> = Vec::new();
    // A heading, or a sentence that leads to something, stays with what follows.
    let mut held: Vec<String> = Vec::new();
    for block in blocks {
        let mut found = one(block, width, look);
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

fn one(block: &Block, width: usize, look: Look) -> Vec<Vec<String>> {
    match block {
        Block::Heading(title) => vec![heading(title, width, look)],
        // It stays with what follows.
        Block::Text(Tone::Strong, words) => vec![wrap(words, width)],
        Block::Text(_, words) => vec![spaced(wrap(words, width))],
        Block::Keys(entries) => {
            let names = entries.iter().map(|one| columns(&one.name)).max().unwrap_or_default();
            let indent = names.min(WIDEST_NAME) + 3;
            vec![spaced(entries.iter().flat_map(|one| entry(one, indent, width)).collect())]
        }
        Block::Entries(entries) => {
            let each = entries.iter().map(|one| entry(one, columns(&one.name) + 2, width));
            last_spaced(each.collect())
        }
        Block::List(items) => {
            last_spaced(items.iter().map(|item| hang(look.bullet(), 2, item, width)).collect())
        }
        Block::Ticks { boxes, items } => {
            last_spaced(items.iter().map(|item| tick(boxes, item, width)).collect())
        }
        Block::Blanks(rows) => rows
            .iter()
            .map(|row| vec![String::new(), blanks(row, width)])
            .chain([vec![String::new()]])
            .collect(),
        Block::Square { label, .. } => {
            let mut lines = boxed(&format!("[{label}]"), width.min(40));
            lines.push(String::new());
            vec![lines]
        }
        Block::Table(shown) => vec![spaced(table(shown, width, look))],
        Block::Frame { weight, title, inside } => vec![frame(*weight, title, inside, width, look)],
        Block::Columns(parts) => parts.iter().flat_map(|part| groups(&part.blocks, width, look)).collect(),
        Block::Together(inside) => vec![groups(inside, width, look).concat()],
        Block::Figure(Figure { scene, letters }) => vec![spaced(match letters {
            Some(Letters::Bars(all)) => bars(all, width, look),
            Some(Letters::Sketch(lines)) => lines.clone(),
            None => wrap(&scene.description, width),
        })],
        Block::Verbatim(text) => vec![spaced(text.lines().map(str::to_owned).collect())],
    }
}

fn heading(title: &str, width: usize, look: Look) -> Vec<String> {
    match look {
        Look::Terminal => {
            let rest = width.saturating_sub(columns(title) + 1);
            vec![format!("{title} {}", look.rule().to_string().repeat(rest))]
        }
        Look::Printer => {
            let title = title.to_uppercase();
            let mut lines = vec![String::new()];
            lines.extend(wrap(&title, width));
            lines.push("-".repeat(columns(&title).min(width)));
            lines
        }
    }
}

fn spaced(mut lines: Vec<String>) -> Vec<String> {
    lines.push(String::new());
    lines
}

fn last_spaced(mut groups: Vec<Vec<String>>) -> Vec<Vec<String>> {
    if let Some(last) = groups.last_mut() {
        last.push(String::new());
    }
    groups
}

fn entry(entry: &Entry, indent: usize, width: usize) -> Vec<String> {
    let label = if entry.name.is_empty() { String::new() } else { format!("{}:", entry.name) };
    let mut lines = Vec::new();
    for (place, text) in entry.said.iter().enumerate() {
        let label = if place == 0 { label.as_str() } else { "" };
        if columns(label) + 1 > indent {
            lines.extend(wrap(label, width));
            lines.extend(hang("", indent, text, width));
        } else {
            lines.extend(hang(label, indent, text, width));
        }
    }
    lines
}

fn tick(boxes: &[String], item: &Tick, width: usize) -> Vec<String> {
    let sign = |place: usize| if item.ticked == Some(place) { "[x]" } else { "[ ]" };
    let label = if boxes.is_empty() {
        sign(0).to_owned()
    } else {
        let each = boxes.iter().enumerate().map(|(place, word)| format!("{} {word}", sign(place)));
        each.collect::<Vec<_>>().join("  ")
    };
    hang(&label, columns(&label) + 2, &item.text, width)
}

fn frame(weight: Weight, title: &str, inside: &[Block], width: usize, look: Look) -> Vec<String> {
    let rule = match (weight, look) {
        (Weight::Thin, _) => look.rule().to_string(),
        (Weight::Thick, Look::Terminal) => "═".to_owned(),
        (Weight::Black, Look::Terminal) => "█".to_owned(),
        (Weight::Thick, Look::Printer) => "*".to_owned(),
        (Weight::Black, Look::Printer) => "#".to_owned(),
    }
    .repeat(width);
    let room = width.saturating_sub(4);
    let mut lines = vec![rule.clone()];
    let title = if look == Look::Printer { title.to_uppercase() } else { title.to_owned() };
    if !title.is_empty() {
        lines.extend(wrap(&title, room).iter().map(|line| format!("  {line}")));
        lines.push(String::new());
    }
    let body = groups(inside, room, look).concat().into_iter();
    lines.extend(body.map(|line| if line.is_empty() { line } else { format!("  {line}") }));
    while lines.last().is_some_and(String::is_empty) {
        lines.pop();
    }
    lines.push(rule);
    lines.push(String::new());
    lines
}

/// An empty square with its label in the first line.
fn boxed(label: &str, width: usize) -> Vec<String> {
    let edge = format!("+{}+", "-".repeat(width.saturating_sub(2)));
    let row = |text: &str| format!("|{text}{}|", " ".repeat(width.saturating_sub(columns(text) + 2)));
    vec![edge.clone(), row(label), row(""), row(""), edge]
}

fn blanks(row: &[Blank], width: usize) -> String {
    let shares: usize = row.iter().map(|blank| usize::from(blank.share)).sum();
    let room = width.saturating_sub(2 * row.len().saturating_sub(1));
    let each: Vec<String> = row
        .iter()
        .map(|blank| {
            let share = room * usize::from(blank.share) / shares.max(1);
            let label = freed(&blank.label);
            let value = freed(&blank.value);
            if value.is_empty() {
                format!("{label} {}", "_".repeat(share.saturating_sub(columns(&label) + 1).max(3)))
            } else {
                let used = columns(&label) + columns(&value) + 2;
                format!("{label} _{value}{}", "_".repeat(share.saturating_sub(used).max(1)))
            }
        })
        .collect();
    each.join("  ")
}
