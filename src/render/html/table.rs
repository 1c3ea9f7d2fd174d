//! Owns tables as HTML. On a narrow screen each row of a wide table becomes a small list, so that no
//! figure is broken and nothing is scrolled sideways.

use super::escape::{add, text};
use crate::document::{Column, Room, Table};

/// Most columns that stand beside one another on a telephone.
const NARROW: usize = 3;

/// Writes a table.
pub(super) fn table(out: &mut String, table: &Table) {
    let mut classes = Vec::new();
    if table.room == Room::Writing {
        classes.push("room");
    }
    if table.columns.len() > NARROW {
        classes.push("wide");
    }
    let class = if classes.is_empty() { String::new() } else { format!(" class=\"{}\"", classes.join(" ")) };
    add(out, format_args!("<table{class}>\n"));
    if !table.caption.is_empty() {
        add(out, format_args!("<caption>{}</caption>\n", text(&table.caption)));
    }
    if table.columns.iter().any(|column| column.least > 0) {
        out.push_str("<colgroup>");
        for column in &table.columns {
            let class =
                if column.least > 0 { format!(" class=\"w{}\"", column.least) } else { String::new() };
            add(out, format_args!("<col{class}>"));
        }
        out.push_str("</colgroup>\n");
    }
    out.push_str("<thead><tr>");
    for column in &table.columns {
        head(out, column);
    }
    out.push_str("</tr></thead>\n<tbody>\n");
    for (row, cells) in table.rows.iter().zip(table.filled()) {
        out.push_str(if row.strong { "<tr class=\"strong\">" } else { "<tr>" });
        for (place, (cell, column)) in cells.iter().zip(&table.columns).enumerate() {
            let class = number(column);
            if place == 0 {
                add(out, format_args!("<th scope=\"row\"{class}>{}</th>", text(cell)));
            } else {
                let of = text(&column.title());
                add(out, format_args!("<td{class} data-of=\"{of}\">{}</td>", text(cell)));
            }
        }
        out.push_str("</tr>\n");
    }
    out.push_str("</tbody>\n</table>\n");
}

fn number(column: &Column) -> &'static str {
    if column.align.is_whole() { " class=\"n\"" } else { "" }
}

fn head(out: &mut String, column: &Column) {
    let class = number(column);
    if column.head.is_empty() {
        add(out, format_args!("<td{class}></td>"));
    } else {
        add(out, format_args!("<th scope=\"col\"{class}>{}</th>", text(&column.title())));
    }
}
