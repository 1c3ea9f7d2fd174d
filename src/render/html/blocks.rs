//! Owns each block as HTML.

use super::{
    escape::{add, text},
    svg,
};
use crate::render::sheet::{Block, Room, Table, Tone, Weight};

/// Writes blocks; `level` is the level of their headings, `id` the leaf's name.
pub(super) fn all(out: &mut String, blocks: &[Block], level: u8, id: &str) {
    for block in blocks {
        one(out, block, level, id);
    }
}

fn one(out: &mut String, block: &Block, level: u8, id: &str) {
    match block {
        Block::Heading(title) => heading(out, title, level),
        Block::Text(tone, words) => {
            let class = match tone {
                Tone::Lead => " class=\"lead\"",
                Tone::Strong => " class=\"strong\"",
                Tone::Plain => "",
                Tone::Small => " class=\"small\"",
            };
            add(out, format_args!("<p{class}>{}</p>\n", text(words)));
        }
        Block::Keys(pairs) => {
            out.push_str("<dl>\n");
            for (name, value) in pairs {
                add(out, format_args!("<dt>{}</dt><dd>{}</dd>\n", text(name), text(value)));
            }
            out.push_str("</dl>\n");
        }
        Block::List(items) => {
            out.push_str("<ul>\n");
            for item in items {
                add(out, format_args!("<li>{}</li>\n", text(item)));
            }
            out.push_str("</ul>\n");
        }
        Block::Ticks { boxes, items } => ticks(out, boxes, items),
        Block::Blanks(rows) => {
            for row in rows {
                out.push_str("<p class=\"blanks\">");
                for label in row {
                    add(out, format_args!("<span class=\"blank\">{}</span> ", text(label)));
                }
                out.push_str("</p>\n");
            }
        }
        Block::Table(shown) => table(out, shown),
        Block::Frame { weight, title, inside } => {
            let class = match weight {
                Weight::Thin => "frame",
                Weight::Thick => "frame thick",
                Weight::Black => "frame thick black",
            };
            add(out, format_args!("<div class=\"{class}\">\n"));
            heading(out, title, level);
            all(out, inside, level + 1, id);
            out.push_str("</div>\n");
        }
        Block::Figure(scene) => {
            add(out, format_args!("<figure>\n{}\n</figure>\n", svg::svg(scene, &format!("{id}-drawing"))));
        }
    }
}

fn heading(out: &mut String, title: &str, level: u8) {
    add(out, format_args!("<h{level}>{}</h{level}>\n", text(title)));
}

fn ticks(out: &mut String, boxes: &[&str], items: &[String]) {
    out.push_str("<ul class=\"ticks\">\n");
    for item in items {
        let shown = if boxes.is_empty() {
            "\u{2610}".to_owned()
        } else {
            let each: Vec<String> =
                boxes.iter().map(|word| format!("\u{2610}\u{a0}{}", text(word))).collect();
            each.join(" \u{2002}")
        };
        add(
            out,
            format_args!(
                "<li class=\"tick\"><span class=\"boxes\">{shown}</span> <span>{}</span></li>\n",
                text(item)
            ),
        );
    }
    out.push_str("</ul>\n");
}

fn table(out: &mut String, table: &Table) {
    let total: u32 = table.columns.iter().map(|column| u32::from(column.share)).sum();
    let class = match table.room {
        Room::None => "",
        Room::Number => " class=\"room\"",
    };
    add(out, format_args!("<table{class}>\n<caption>{}</caption>\n<colgroup>", text(&table.caption)));
    for column in &table.columns {
        // Whole per cents, as the style sheet has them.
        let share = (u32::from(column.share) * 100 + total / 2) / total.max(1);
        add(out, format_args!("<col class=\"w{share}\">"));
    }
    out.push_str("</colgroup>\n<thead><tr>");
    for column in &table.columns {
        let class = if column.numbers { " class=\"n\"" } else { "" };
        if column.head.is_empty() {
            add(out, format_args!("<td{class}></td>"));
        } else {
            add(out, format_args!("<th scope=\"col\"{class}>{}</th>", text(&column.head)));
        }
    }
    out.push_str("</tr></thead>\n<tbody>\n");
    for row in &table.rows {
        out.push_str("<tr>");
        for (place, (cell, column)) in row.iter().zip(&table.columns).enumerate() {
            let class = if column.numbers { " class=\"n\"" } else { "" };
            if place == 0 {
                add(out, format_args!("<th scope=\"row\"{class}>{}</th>", text(cell)));
            } else {
                add(out, format_args!("<td{class}>{}</td>", text(cell)));
            }
        }
        out.push_str("</tr>\n");
    }
    out.push_str("</tbody>\n</table>\n");
}
