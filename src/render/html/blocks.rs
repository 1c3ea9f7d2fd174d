//! Owns each block as HTML.

use super::{
    escape::{add, text},
    svg, table,
};
use crate::document::{Blank, Block, Entry, Tick, Tone, Weight};

/// The blocks of one leaf; it numbers their drawings.
pub(super) struct Blocks<'l> {
    leaf: &'l str,
    drawings: usize,
}

impl<'l> Blocks<'l> {
    /// For a leaf of that name.
    pub(super) fn new(leaf: &'l str) -> Self {
        Self { leaf, drawings: 0 }
    }

    /// Writes blocks; `level` is the level of their headings.
    pub(super) fn all(&mut self, out: &mut String, blocks: &[Block], level: u8) {
        for block in blocks {
            self.one(out, block, level);
        }
    }

    fn one(&mut self, out: &mut String, block: &Block, level: u8) {
        match block {
            Block::Heading(title) => heading(out, title, level),
            Block::Text(tone, words) => paragraph(out, *tone, words),
            Block::Keys(entries) => keys(out, entries),
            Block::Entries(list) => entries(out, list),
            Block::List(items) => {
                out.push_str("<ul>\n");
                for item in items {
                    add(out, format_args!("<li>{}</li>\n", text(item)));
                }
                out.push_str("</ul>\n");
            }
            Block::Ticks { boxes, items } => ticks(out, boxes, items),
            Block::Blanks(rows) => rows.iter().for_each(|row| blanks(out, row)),
            Block::Square { label, lines } => {
                add(out, format_args!("<p class=\"square h{lines}\">{}</p>\n", text(label)));
            }
            Block::Table(shown) => table::table(out, shown),
            Block::Frame { weight, title, inside } => {
                let class = match weight {
                    Weight::Thin => "frame",
                    Weight::Thick => "frame thick",
                    Weight::Black => "frame thick black",
                };
                add(out, format_args!("<div class=\"{class}\">\n"));
                let inner = if title.is_empty() {
                    level
                } else {
                    heading(out, title, level);
                    level + 1
                };
                self.all(out, inside, inner);
                out.push_str("</div>\n");
            }
            Block::Columns(parts) => {
                out.push_str("<div class=\"columns\">\n");
                for part in parts {
                    add(out, format_args!("<div class=\"c{}\">\n", part.share));
                    self.all(out, &part.blocks, level);
                    out.push_str("</div>\n");
                }
                out.push_str("</div>\n");
            }
            Block::Together(inside) => {
                out.push_str("<div class=\"together\">\n");
                self.all(out, inside, level);
                out.push_str("</div>\n");
            }
            Block::Figure(figure) => {
                self.drawings += 1;
                let id = format!("{}-drawing-{}", self.leaf, self.drawings);
                add(out, format_args!("<figure>\n{}\n</figure>\n", svg::svg(&figure.scene, &id)));
            }
            Block::Verbatim(lines) => add(out, format_args!("<pre>{}</pre>\n", lined(lines))),
        }
    }
}

/// Several lines, each escaped.
fn lined(lines: &str) -> String {
    lines.lines().map(text).collect::<Vec<_>>().join("\n")
}

fn heading(out: &mut String, title: &str, level: u8) {
    add(out, format_args!("<h{level}>{}</h{level}>\n", text(title)));
}

fn paragraph(out: &mut String, tone: Tone, words: &str) {
    let class = match tone {
        Tone::Lead => " class=\"lead\"",
        Tone::Strong => " class=\"strong\"",
        Tone::Plain => "",
        Tone::Small => " class=\"small\"",
    };
    add(out, format_args!("<p{class}>{}</p>\n", text(words)));
}

fn keys(out: &mut String, entries: &[Entry]) {
    if entries.is_empty() {
        return;
    }
    out.push_str("<dl class=\"keys\">\n");
    for entry in entries {
        add(out, format_args!("<div><dt>{}</dt>", text(&entry.name)));
        for said in &entry.said {
            add(out, format_args!("<dd>{}</dd>", text(said)));
        }
        out.push_str("</div>\n");
    }
    out.push_str("</dl>\n");
}

/// A name may come more than once here, which names and values in a list of pairs may not.
fn entries(out: &mut String, entries: &[Entry]) {
    if entries.is_empty() {
        return;
    }
    out.push_str("<ul class=\"entries\">\n");
    for entry in entries {
        let said: Vec<String> = entry.said.iter().map(|said| text(said)).collect();
        let name =
            if entry.name.is_empty() { String::new() } else { format!("<b>{}:</b> ", text(&entry.name)) };
        add(out, format_args!("<li>{name}{}</li>\n", said.join("<br>")));
    }
    out.push_str("</ul>\n");
}

fn ticks(out: &mut String, boxes: &[String], items: &[Tick]) {
    out.push_str("<ul class=\"ticks\">\n");
    for item in items {
        let sign = |place: usize| if item.ticked == Some(place) { '\u{2612}' } else { '\u{2610}' };
        let shown = if boxes.is_empty() {
            sign(0).to_string()
        } else {
            let each =
                boxes.iter().enumerate().map(|(place, word)| format!("{}\u{a0}{}", sign(place), text(word)));
            each.collect::<Vec<_>>().join(" \u{2002}")
        };
        add(
            out,
            format_args!(
                "<li class=\"tick\"><span class=\"boxes\">{shown}</span> <span>{}</span></li>\n",
                text(&item.text)
            ),
        );
    }
    out.push_str("</ul>\n");
}

fn blanks(out: &mut String, row: &[Blank]) {
    out.push_str("<p class=\"blanks\">");
    for blank in row {
        add(
            out,
            format_args!(
                "<span class=\"blank c{}\"><span>{}</span> <span class=\"line\">{}</span></span> ",
                blank.share,
                text(&blank.label),
                text(&blank.value)
            ),
        );
    }
    out.push_str("</p>\n");
}
