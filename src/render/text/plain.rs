//! Owns the sheet as pages of lines.

use super::blocks::groups;
use super::columns::{columns, wrap};
use super::look::Look;
use crate::document::{Leaf, Sheet};
use crate::render::Paper;

/// Columns of a page: ten to the inch, within the margins of A4 and Letter.
const WIDTH: usize = 78;

/// The sheet as text for a line printer, six lines to the inch; pages end with a form feed. A leaf that
/// stands apart begins on an odd page; the page before it may be empty but for its head.
pub fn plain(sheet: &Sheet, paper: Paper) -> String {
    // Six lines to the inch on 11.7 and 11 inches, less four at the foot (derived).
    let lines = match paper {
        Paper::A4 => 66,
        Paper::Letter => 62,
    };
    let mut pages: Vec<String> = Vec::new();
    for numbered in sheet.numbered() {
        if numbered.first().is_some_and(|leaf| leaf.apart) && pages.len() % 2 == 1 {
            pages.push(String::new());
        }
        let bodies: Vec<(&Leaf, Vec<String>)> = numbered
            .iter()
            .flat_map(|leaf| leaf_pages(leaf, lines - 3).into_iter().map(move |page| (leaf, page)))
            .collect();
        let count = bodies.len();
        for (place, (leaf, body)) in bodies.iter().enumerate() {
            let mut page = head(leaf, place + 1, count);
            for line in body {
                page.push_str(&boxes(line.trim_end()));
                page.push('\n');
            }
            pages.push(page);
        }
    }
    pages.join("\u{c}")
}

/// A line printer has no box among its signs.
fn boxes(line: &str) -> String {
    line.replace('\u{2610}', "[ ]").replace('\u{2612}', "[x]")
}

fn head(leaf: &Leaf, page: usize, count: usize) -> String {
    let right = leaf.number(page, count);
    let room = WIDTH.saturating_sub(columns(&right) + 1);
    let pad = |text: &str| " ".repeat(room.saturating_sub(columns(text)) + 1);
    let mut bold = wrap(&leaf.head.bold, room);
    let last = bold.pop().unwrap_or_default();
    bold.push(format!("{last}{}{right}", pad(&last)));
    bold.push(leaf.head.plain.clone());
    bold.push("\n".to_owned());
    bold.join("\n")
}

fn leaf_pages(leaf: &Leaf, room: usize) -> Vec<Vec<String>> {
    let title = leaf.title.to_uppercase();
    let rule = "=".repeat(columns(&title).min(WIDTH));
    let mut first = wrap(&title, WIDTH);
    first.extend([rule, String::new()]);
    let mut all = vec![first];
    all.extend(groups(&leaf.blocks, WIDTH, Look::Printer));
    let mut pages: Vec<Vec<String>> = vec![Vec::new()];
    for group in all {
        let used = pages.last().map_or(0, Vec::len);
        let needed = group.iter().rposition(|line| !line.is_empty()).map_or(0, |last| last + 1);
        if used > 0 && used + needed > room {
            pages.push(Vec::new());
        }
        for line in group {
            let full = pages.last().is_some_and(|page| page.len() >= room);
            if full {
                if line.is_empty() {
                    continue;
                }
                pages.push(Vec::new());
            }
            if let Some(page) = pages.last_mut() {
                let again = page.last().is_none_or(String::is_empty);
                if !(line.is_empty() && again) {
                    page.push(line);
                }
            }
        }
    }
    pages
}
