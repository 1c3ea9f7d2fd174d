//! Owns tables as lines.

use super::wrap::{columns, wrap};
use crate::render::sheet::{Column, Room, Table};

/// The groups of a table: caption and head with the first row, then row by row. A table whose words
/// do not fit beside each other comes in two, each with the heads of the rows.
pub(super) fn table(table: &Table, width: usize) -> Vec<Vec<String>> {
    let needed: usize = needs(table).iter().map(|need| need + 2).sum();
    let count = table.columns.len();
    if needed > width + 2 && count > 3 {
        let middle = count / 2 + 1;
        let mut groups = one(&part(table, 1..middle), width);
        groups.extend(one(&part(table, middle..count), width));
        return groups;
    }
    one(table, width)
}

/// The table with its first column and some of the others.
fn part(table: &Table, places: std::ops::Range<usize>) -> Table {
    let kept = |place: &usize| *place == 0 || places.contains(place);
    let column = |(place, column): (usize, &Column)| kept(&place).then(|| column.clone());
    let cell = |(place, cell): (usize, &String)| kept(&place).then(|| cell.clone());
    Table {
        columns: table.columns.iter().enumerate().filter_map(column).collect(),
        rows: table.rows.iter().map(|row| row.iter().enumerate().filter_map(cell).collect()).collect(),
        ..table.clone()
    }
}

fn one(table: &Table, width: usize) -> Vec<Vec<String>> {
    let widths = widths(table, width);
    let heads: Vec<String> = table.columns.iter().map(|column| column.head.clone()).collect();
    let mut lead = wrap(&table.caption, width);
    lead.extend(row(table, &heads, &widths));
    lead.push("-".repeat(widths.iter().sum::<usize>() + 2 * widths.len().saturating_sub(1)));
    let mut groups = Vec::new();
    for cells in &table.rows {
        let mut lines = std::mem::take(&mut lead);
        lines.extend(row(table, cells, &widths));
        if table.room != Room::None {
            lines.push(String::new());
            lines.push("-".repeat(width));
        }
        groups.push(lines);
    }
    if let Some(last) = groups.last_mut() {
        last.push(String::new());
    } else {
        groups.push(lead);
    }
    groups
}

/// Shares of the width; no column is narrower than its longest word where there is room.
fn widths(table: &Table, width: usize) -> Vec<usize> {
    let gaps = 2 * table.columns.len().saturating_sub(1);
    let room = width.saturating_sub(gaps);
    let total: usize = table.columns.iter().map(|column| usize::from(column.share)).sum();
    let mut widths: Vec<usize> =
        table.columns.iter().map(|column| room * usize::from(column.share) / total.max(1)).collect();
    let need = needs(table);
    // Columns that are too narrow take from those with the most to spare.
    for place in 0..widths.len() {
        while let (Some(now), Some(need_here)) = (widths.get(place).copied(), need.get(place)) {
            if now >= *need_here {
                break;
            }
            let donor = widths
                .iter()
                .zip(&need)
                .enumerate()
                .filter(|(other, (now, need))| *other != place && now > need)
                .max_by_key(|(_, (now, need))| *now - *need)
                .map(|(other, _)| other);
            let Some(donor) = donor else { break };
            if let Some(one) = widths.get_mut(donor) {
                *one -= 1;
            }
            if let Some(one) = widths.get_mut(place) {
                *one += 1;
            }
        }
    }
    widths
}

/// The longest word of each column, up to a bound.
fn needs(table: &Table) -> Vec<usize> {
    let longest = |place: usize, head: &str| {
        let cells = table.rows.iter().filter_map(|row| row.get(place).map(String::as_str));
        cells.chain([head]).flat_map(|text| text.split(' ')).map(columns).max().unwrap_or_default().min(18)
    };
    table.columns.iter().enumerate().map(|(place, column)| longest(place, &column.head)).collect()
}

fn row(table: &Table, cells: &[String], widths: &[usize]) -> Vec<String> {
    let wrapped: Vec<Vec<String>> =
        cells.iter().zip(widths).map(|(cell, width)| wrap(cell, *width)).collect();
    let height = wrapped.iter().map(Vec::len).max().unwrap_or_default();
    (0..height)
        .map(|at| {
            let mut line = String::new();
            for ((lines, width), column) in wrapped.iter().zip(widths).zip(&table.columns) {
                let text = lines.get(at).map(String::as_str).unwrap_or_default();
                let pad = " ".repeat(width.saturating_sub(columns(text)));
                if column.numbers {
                    line.push_str(&pad);
                    line.push_str(text);
                } else {
                    line.push_str(text);
                    line.push_str(&pad);
                }
                line.push_str("  ");
            }
            line.trim_end().to_owned()
        })
        .collect()
}
