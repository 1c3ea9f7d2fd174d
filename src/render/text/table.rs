//! Owns tables as lines.

use comfy_table::{CellAlignment, ColumnConstraint, ContentArrangement, LineStyle, TableStyle, Width};

use super::columns::{columns, freed, wrap};
use super::look::Look;
use crate::document::{Column, Room, Row, Table};

/// Columns between two columns of a table: a cell's padding and one between.
const GUTTER: u16 = 2;

/// Widest head of a row that is not broken.
const WHOLE_HEAD: usize = 20;

/// The lines of a table. One whose words do not fit beside each other comes in two, each with the
/// heads of the rows.
pub(super) fn table(table: &Table, width: usize, look: Look) -> Vec<String> {
    let needed: usize = (0..table.columns.len()).map(|place| least(table, place)).sum();
    let gutters = usize::from(GUTTER) * table.columns.len().saturating_sub(1);
    let count = table.columns.len();
    if needed + gutters > width && count > 3 {
        let middle = count / 2 + 1;
        let mut lines = one(&part(table, 1..middle), width, look);
        lines.push(String::new());
        lines.extend(one(&Table { caption: String::new(), ..part(table, middle..count) }, width, look));
        return lines;
    }
    one(table, width, look)
}

/// The table with its first column and some of the others.
fn part(table: &Table, places: std::ops::Range<usize>) -> Table {
    let kept = |place: &usize| *place == 0 || places.contains(place);
    let column = |(place, column): (usize, &Column)| kept(&place).then(|| column.clone());
    let row = |row: &Row| {
        let cells = row.cells.iter().enumerate().filter(|(place, _)| kept(place));
        Row { cells: cells.map(|(_, cell)| cell.clone()).collect(), strong: row.strong }
    };
    Table {
        columns: table.columns.iter().enumerate().filter_map(column).collect(),
        rows: table.rows.iter().map(row).collect(),
        ..table.clone()
    }
}

/// The least width of a column: its figures whole, its words one under another.
fn least(table: &Table, place: usize) -> usize {
    let Some(column) = table.columns.get(place) else { return 0 };
    let title = column.title();
    let head = title.split(' ').map(columns).max().unwrap_or_default();
    let cells = if column.align.is_whole() {
        whole(table, place)
    } else if place == 0 {
        // The heads of the rows stay whole where they are short.
        table.column(place).map(columns).max().unwrap_or_default().min(WHOLE_HEAD)
    } else {
        table.column(place).flat_map(|cell| cell.split(' ')).map(columns).max().unwrap_or_default().min(18)
    };
    head.max(cells)
}

/// The width of the widest figure, lined up.
fn whole(table: &Table, place: usize) -> usize {
    table.filled().iter().filter_map(|row| row.get(place)).map(|cell| columns(cell)).max().unwrap_or_default()
}

fn one(table: &Table, width: usize, look: Look) -> Vec<String> {
    let mut drawn = comfy_table::Table::new();
    let rule = look.rule();
    let mut ruled = TableStyle::new().header_separator(LineStyle::none().fill(rule).junction(rule));
    if table.room == Room::Writing {
        ruled = ruled.row_separator(LineStyle::none().fill('.').junction(' '));
    }
    drawn.load_style(ruled).set_content_arrangement(ContentArrangement::Dynamic);
    drawn.set_width(u16::try_from(width).unwrap_or(80));
    drawn.set_header(table.columns.iter().map(Column::title));
    let room = if table.room == Room::Writing { "\n" } else { "" };
    for cells in table.filled() {
        drawn.add_row(cells.iter().map(|cell| format!("{cell}{room}")));
    }
    let last = table.columns.len().saturating_sub(1);
    for (place, column) in drawn.column_iter_mut().enumerate() {
        column.set_padding((0, if place == last { 0 } else { GUTTER - 1 }));
        let Some(shape) = table.columns.get(place) else { continue };
        if shape.align.is_whole() {
            column.set_cell_alignment(CellAlignment::Right);
        }
        let gutter = if place == last { 0 } else { usize::from(GUTTER - 1) };
        let narrowest = u16::try_from(least(table, place) + gutter).unwrap_or_default();
        column.set_constraint(ColumnConstraint::LowerBoundary(Width::Fixed(narrowest)));
    }
    let mut lines = if table.caption.is_empty() { Vec::new() } else { wrap(&table.caption, width) };
    lines.extend(drawn.to_string().lines().map(freed));
    lines
}
