//! Owns tables: the head stands again on each page, for the eye only.

use krilla::tagging::{TableHeaderScope, Tag, TagKind};

use super::display::{Node, Op};
use super::fonts::Weight;
use super::layout::{LEADING, Layout};
use super::lines::lines_high;
use crate::render::sheet::{Room, Table};

/// Above and below the text of a cell, points.
const PAD: f32 = 2.0;
/// Left and right of the text of a cell, points.
const SIDE: f32 = 3.5;
/// Least height of a row to write a number in, points.
const NUMBER: f32 = 19.0;

/// What a row is.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Row {
    Head,
    HeadAgain,
    Body,
}

/// A table with its measures.
struct Grid<'t> {
    table: &'t Table,
    heads: Vec<String>,
    widths: Vec<f32>,
    size: f32,
}

impl Layout<'_> {
    /// Height of caption, head and first rows.
    pub(super) fn table_lead(&self, table: &Table) -> f32 {
        let grid = self.grid(table);
        let caption = self.fonts.face(Weight::Regular).wrap(&table.caption, grid.size, self.width).len();
        let first: f32 = table.rows.iter().take(2).map(|row| self.row_height(&grid, row, Row::Body)).sum();
        lines_high(caption, grid.size) + 2.0 + self.row_height(&grid, &grid.heads, Row::Head) + first
    }

    fn grid<'t>(&self, table: &'t Table) -> Grid<'t> {
        let total: f32 = table.columns.iter().map(|column| f32::from(column.share)).sum();
        let widths = table
            .columns
            .iter()
            .map(|column| f32::from(column.share) / total.max(1.0) * self.width)
            .collect();
        let heads = table.columns.iter().map(|column| column.head.clone()).collect();
        Grid { table, heads, widths, size: self.size - 1.0 }
    }

    /// A table.
    pub(super) fn table(&mut self, table: &Table) -> Node {
        self.need(self.table_lead(table));
        let grid = self.grid(table);
        self.ask(&table.caption);
        let caption = self.lines(Weight::Regular, grid.size, &table.caption);
        self.y += 2.0;
        let head = self.row(&grid, &grid.heads, Row::Head);
        let mut body = Vec::with_capacity(table.rows.len());
        let heights: Vec<f32> = table.rows.iter().map(|row| self.row_height(&grid, row, Row::Body)).collect();
        for (place, row) in table.rows.iter().enumerate() {
            // The last row is not left alone on a page.
            let here = heights.get(place..).unwrap_or_default();
            let high = if here.len() == 2 { here.iter().sum() } else { here.iter().take(1).sum() };
            if self.need(high) {
                self.row(&grid, &grid.heads, Row::HeadAgain);
            }
            body.push(self.row(&grid, row, Row::Body));
        }
        self.y += self.size * 0.7;
        let parts = vec![
            Node::group(Tag::Caption, caption),
            Node::group(Tag::THead, vec![head]),
            Node::group(Tag::TBody, body),
        ];
        Node::group(Tag::Table.with_summary(Some(table.caption.clone())), parts)
    }

    fn row_height(&self, grid: &Grid<'_>, cells: &[String], row: Row) -> f32 {
        let weight = if row == Row::Body { Weight::Regular } else { Weight::Bold };
        let face = self.fonts.face(weight);
        let most = cells
            .iter()
            .zip(&grid.widths)
            .map(|(cell, width)| face.wrap(cell, grid.size, width - 2.0 * SIDE).len())
            .max();
        let high = lines_high(most.unwrap_or(1), grid.size) + 2.0 * PAD;
        match grid.table.room {
            Room::Number if row == Row::Body => high.max(NUMBER),
            _ => high,
        }
    }

    fn row(&mut self, grid: &Grid<'_>, cells: &[String], row: Row) -> Node {
        let high = self.row_height(grid, cells, row);
        let top = self.y;
        let weight = if row == Row::Body { Weight::Regular } else { Weight::Bold };
        let mut x = self.left;
        let mut nodes = Vec::with_capacity(cells.len());
        for (place, ((cell, width), column)) in
            cells.iter().zip(&grid.widths).zip(&grid.table.columns).enumerate()
        {
            self.ask(cell);
            let face = self.fonts.face(weight);
            let lines = face.wrap(cell, grid.size, width - 2.0 * SIDE);
            // Heads stand on the rule under them.
            let lines_here = lines_high(lines.len(), grid.size);
            let first = if row == Row::Body { top + PAD } else { top + high - PAD - lines_here };
            let mut baseline = first + grid.size;
            let mut words = Vec::new();
            for line in lines.iter().filter(|line| !line.is_empty()) {
                let room = width - SIDE - self.fonts.face(weight).width(line.trim_end(), grid.size);
                let start = if column.numbers { x + room } else { x + SIDE };
                if row == Row::HeadAgain {
                    self.decoration(vec![Op::text((start, baseline), weight, grid.size, line)]);
                } else {
                    words.push(self.text((start, baseline), weight, grid.size, line));
                }
                baseline += grid.size * LEADING;
            }
            if grid.table.room != Room::None && place > 0 {
                self.decoration(vec![Op::line((x, top), (x, top + high), 0.4)]);
            }
            nodes.push(Node::group(tag(row, place, cell), words));
            x += width;
        }
        self.y = top + high;
        let (left, right) = (self.left, self.left + self.width);
        let rule = |y: f32, width: f32| Op::line((left, y), (right, y), width);
        if row == Row::Body {
            self.decoration(vec![rule(self.y, 0.4)]);
        } else {
            self.decoration(vec![rule(top, 1.2), rule(self.y, 1.2)]);
        }
        Node::group(Tag::TR, nodes)
    }
}

fn tag(row: Row, place: usize, cell: &str) -> TagKind {
    match (row, place) {
        (Row::Body, 0) => Tag::TH(TableHeaderScope::Row).into(),
        (Row::Head | Row::HeadAgain, _) if !cell.is_empty() => Tag::TH(TableHeaderScope::Column).into(),
        _ => Tag::TD.into(),
    }
}
