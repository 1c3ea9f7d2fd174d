//! Owns tables: the head stands again on each page, for the eye only.

use krilla::tagging::{TableHeaderScope, Tag, TagKind};

use super::display::{Node, Op};
use super::fonts::Weight;
use super::layout::{Layout, step};
use super::lines::lines_high;
use crate::document::{Align, Column, Lined, Room, Table};

/// Above and below the text of a cell, points.
const PAD: f32 = 1.7;
/// Left and right of the text of a cell, points.
const SIDE: f32 = 5.0;
/// Least height of a row to write in, points.
const WRITING: f32 = 19.0;

/// What a row is.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Row {
    Head,
    HeadAgain,
    Body,
    /// A row that stands out: its head in bold.
    Strong,
}

impl Row {
    fn is_body(self) -> bool {
        matches!(self, Self::Body | Self::Strong)
    }

    fn weight(self, place: usize) -> Weight {
        match (self, place) {
            (Self::Body, _) => Weight::Regular,
            (Self::Strong, place) if place > 0 => Weight::Regular,
            _ => Weight::Bold,
        }
    }
}

/// A table with its measures.
struct Grid<'t> {
    table: &'t Table,
    heads: Vec<String>,
    widths: Vec<f32>,
    lined: Vec<Lined>,
    size: f32,
}

/// What a column needs, points.
struct Need {
    /// No word is cut.
    least: f32,
    /// No line is broken.
    all: f32,
    words: bool,
}

/// The longest word that widens a column, points.
const LONGEST: f32 = 110.0;

/// The widths of columns that together are `width` wide.
fn shared(needs: &[Need], width: f32) -> Vec<f32> {
    let least: f32 = needs.iter().map(|need| need.least).sum();
    let all: f32 = needs.iter().map(|need| need.all).sum();
    if all <= width {
        // What is left over goes to the words first.
        let weight = |need: &Need| need.all * if need.words { 2.0 } else { 1.0 };
        let total: f32 = needs.iter().map(weight).sum();
        return needs.iter().map(|need| need.all + (width - all) * weight(need) / total.max(1.0)).collect();
    }
    if least <= width {
        let more = (all - least).max(1.0);
        return needs
            .iter()
            .map(|need| need.least + (width - least) * (need.all - need.least) / more)
            .collect();
    }
    needs.iter().map(|need| need.least * width / least.max(1.0)).collect()
}

impl Layout<'_> {
    /// Height of caption, head and first rows.
    pub(super) fn table_lead(&self, table: &Table) -> f32 {
        let grid = self.grid(table);
        let caption = self.fonts.face(Weight::Regular).wrap(&table.caption, grid.size, self.width).len();
        let first: f32 =
            table.rows.iter().take(2).map(|row| self.row_height(&grid, &row.cells, Row::Body)).sum();
        lines_high(caption, grid.size) + 2.0 + self.row_height(&grid, &grid.heads, Row::Head) + first
    }

    fn grid<'t>(&self, table: &'t Table) -> Grid<'t> {
        let size = if self.size > 12.0 { self.size - 1.0 } else { 8.2 };
        let heads: Vec<String> = table.columns.iter().map(Column::title).collect();
        let face = self.fonts.face(Weight::Regular);
        let lined: Vec<Lined> = (0..)
            .zip(&table.columns)
            .map(|(place, column)| Lined::of(table.column(place), column.align, &|c| face.letter(c, size)))
            .collect();
        let needs: Vec<Need> = (0..)
            .zip(&table.columns)
            .zip(&lined)
            .map(|((place, column), lined)| {
                let head = self.words(&column.title(), Weight::Bold, size);
                let cells = if column.align.is_whole() {
                    (lined.width(), lined.width())
                } else {
                    table.column(place).map(|cell| self.words(cell, Weight::Regular, size)).fold(
                        (0.0, 0.0),
                        |(least, all), (word, line)| {
                            (f32::max(least, word.min(LONGEST)), f32::max(all, line))
                        },
                    )
                };
                let share = f32::from(column.least) / 100.0 * self.width;
                let least = (cells.0.max(head.0) + 2.0 * SIDE).max(share);
                // A head may break once or twice; it does not widen a column of figures by all its length.
                let all = (cells.1.max(head.1 * 0.6) + 2.0 * SIDE).max(least);
                Need { least, all, words: !column.align.is_whole() }
            })
            .collect();
        let widths = shared(&needs, self.width);
        Grid { table, heads, widths, lined, size }
    }

    /// The widest word of a text, and all of it.
    fn words(&self, text: &str, weight: Weight, size: f32) -> (f32, f32) {
        let face = self.fonts.face(weight);
        let longest = text.split(' ').map(|word| face.width(word, size)).fold(0.0, f32::max);
        (longest, face.width(text, size))
    }

    /// A table.
    pub(super) fn table(&mut self, table: &Table) -> Node {
        self.need(self.table_lead(table));
        let grid = self.grid(table);
        let caption = if table.caption.is_empty() {
            Vec::new()
        } else {
            self.lines(Weight::Regular, grid.size, &table.caption)
        };
        self.y += 2.0;
        let head = self.row(&grid, &grid.heads, Row::Head);
        let mut body = Vec::with_capacity(table.rows.len());
        let heights: Vec<f32> =
            table.rows.iter().map(|row| self.row_height(&grid, &row.cells, Row::Body)).collect();
        for (place, row) in table.rows.iter().enumerate() {
            // The last row is not left alone on a page.
            let here = heights.get(place..).unwrap_or_default();
            let high = if here.len() == 2 { here.iter().sum() } else { here.iter().take(1).sum() };
            if self.need(high) {
                self.row(&grid, &grid.heads, Row::HeadAgain);
            }
            let kind = if row.strong { Row::Strong } else { Row::Body };
            body.push(self.row(&grid, &row.cells, kind));
        }
        self.y += self.size * 0.7;
        let mut parts = Vec::new();
        if !caption.is_empty() {
            parts.push(Node::group(Tag::Caption, caption));
        }
        parts.push(Node::group(Tag::THead, vec![head]));
        parts.push(Node::group(Tag::TBody, body));
        Node::group(Tag::Table.with_summary(Some(table.caption.clone())), parts)
    }

    fn row_height(&self, grid: &Grid<'_>, cells: &[String], row: Row) -> f32 {
        let most = (0..).zip(cells).map(|(place, cell)| self.cell(grid, place, cell, row).len()).max();
        let high = lines_high(most.unwrap_or(1), grid.size) + 2.0 * PAD;
        match grid.table.room {
            Room::Writing if row.is_body() => high.max(WRITING),
            _ => high,
        }
    }

    /// The lines of a cell; a figure is one, whole.
    fn cell(&self, grid: &Grid<'_>, place: usize, cell: &str, row: Row) -> Vec<String> {
        let width = grid.widths.get(place).copied().unwrap_or_default() - 2.0 * SIDE;
        let whole = grid.table.columns.get(place).is_some_and(|column| column.align.is_whole());
        if row.is_body() && whole {
            return vec![cell.to_owned()];
        }
        self.fonts.face(row.weight(place)).wrap(cell, grid.size, width)
    }

    fn row(&mut self, grid: &Grid<'_>, cells: &[String], row: Row) -> Node {
        let high = self.row_height(grid, cells, row);
        let top = self.y;
        let mut x = self.left;
        let mut nodes = Vec::with_capacity(cells.len());
        for (place, (((cell, width), column), lined)) in
            cells.iter().zip(&grid.widths).zip(&grid.table.columns).zip(&grid.lined).enumerate()
        {
            self.ask(cell);
            let weight = row.weight(place);
            let lines = self.cell(grid, place, cell, row);
            // Heads stand on the rule under them.
            let lines_here = lines_high(lines.len(), grid.size);
            let first = if row.is_body() { top + PAD } else { top + high - PAD - lines_here };
            let mut baseline = first + grid.size;
            let mut words = Vec::new();
            for line in lines.iter().filter(|line| !line.is_empty()) {
                let wide = |text: &str| self.fonts.face(weight).width(text, grid.size);
                let start = match (column.align, row.is_body()) {
                    (Align::Words, _) => x + SIDE,
                    (_, false) => x + width - SIDE - wide(line.trim_end()),
                    (align, true) => {
                        let before = line.get(..align.cut(line)).unwrap_or_default();
                        x + width - SIDE - lined.after - wide(before)
                    }
                };
                if row == Row::HeadAgain {
                    self.decoration(vec![Op::text((start, baseline), weight, grid.size, line)]);
                } else {
                    words.push(self.text((start, baseline), weight, grid.size, line));
                }
                baseline += step(grid.size);
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
        if row.is_body() {
            self.decoration(vec![rule(self.y, 0.4)]);
        } else {
            self.decoration(vec![rule(top, 1.2), rule(self.y, 1.2)]);
        }
        Node::group(Tag::TR, nodes)
    }
}

fn tag(row: Row, place: usize, cell: &str) -> TagKind {
    match (row, place) {
        (Row::Body | Row::Strong, 0) => Tag::TH(TableHeaderScope::Row).into(),
        (Row::Head | Row::HeadAgain, _) if !cell.is_empty() => Tag::TH(TableHeaderScope::Column).into(),
        _ => Tag::TD.into(),
    }
}
