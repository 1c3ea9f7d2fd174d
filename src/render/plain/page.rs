//! Owns the sheet as pages of lines.

use super::blocks::groups;
use super::wrap::{columns, wrap};
use crate::render::Paper;
use crate::render::sheet::{Leaf, Sheet};

/// Columns of a page: ten to the inch, within the margins of A4 and Letter.
const WIDTH: usize = 78;

/// The sheet as text for a line printer, six lines to the inch; pages end with a form feed.
pub fn plain(sheet: &Sheet, paper: Paper) -> String {
    // Six lines to the inch on 11.7 and 11 inches, less four at the foot (derived).
    let lines = match paper {
        Paper::A4 => 66,
        Paper::Letter => 62,
    };
    let pages: Vec<Vec<String>> = sheet.leaves.iter().flat_map(|leaf| leaf_pages(leaf, lines - 3)).collect();
    let count = pages.len();
    let mut out = String::new();
    for (place, page) in pages.iter().enumerate() {
        if place > 0 {
            out.push('\u{c}');
        }
        out.push_str(&head(sheet, place + 1, count));
        for line in page {
            out.push_str(line.trim_end());
            out.push('\n');
        }
    }
    out
}

fn head(sheet: &Sheet, page: usize, count: usize) -> String {
    let right = format!("page {page} of {count}");
    let room = WIDTH.saturating_sub(columns(&right) + 1);
    let pad = |text: &str| " ".repeat(room.saturating_sub(columns(text)) + 1);
    let mut bold = wrap(&sheet.head.bold, room);
    let last = bold.pop().unwrap_or_default();
    bold.push(format!("{last}{}{right}", pad(&last)));
    bold.push(sheet.head.plain.clone());
    bold.push("\n".to_owned());
    bold.join("\n")
}

fn leaf_pages(leaf: &Leaf, room: usize) -> Vec<Vec<String>> {
    let title = leaf.title.to_uppercase();
    let mut all = vec![vec![title.clone(), "=".repeat(columns(&title).min(WIDTH)), String::new()]];
    all.extend(groups(&leaf.blocks, WIDTH));
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
            if let Some(page) = pages.last_mut()
                && !(page.is_empty() && line.is_empty())
            {
                page.push(line);
            }
        }
    }
    pages
}
