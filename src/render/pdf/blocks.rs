//! Owns each block on the page, and what keeps company with what.

use krilla::tagging::{ListNumbering, Tag};

use super::display::{Node, Op};
use super::fonts::Weight;
use super::layout::Layout;
use super::lines::lines_high;
use crate::document::{Block, Tick, Tone, Weight as Frame};

impl Layout<'_> {
    /// Blocks in their order; `level` is the level of their headings.
    pub(super) fn blocks(&mut self, blocks: &[Block], level: u8) -> Vec<Node> {
        let mut nodes = Vec::new();
        let mut rest = blocks;
        while let Some((block, after)) = rest.split_first() {
            let with = self.lead(after, level);
            self.block(block, level, with, &mut nodes);
            rest = after;
        }
        nodes
    }

    /// Height of blocks on one endless page.
    pub(super) fn height(&self, blocks: &[Block], level: u8) -> f32 {
        let mut scratch = self.scratch();
        scratch.blocks(blocks, level);
        scratch.y
    }

    /// How many lines a text takes in the present column.
    fn count(&self, weight: Weight, words: &str) -> usize {
        self.fonts.face(weight).wrap(words, self.size, self.width).len()
    }

    /// The least of the next block that should follow on the same page.
    fn lead(&self, blocks: &[Block], level: u8) -> f32 {
        let line = lines_high(1, self.size);
        match blocks.split_first() {
            None => 0.0,
            Some((Block::Table(table), _)) => self.table_lead(table),
            Some((
                block @ (Block::Figure(_)
                | Block::Frame { .. }
                | Block::Square { .. }
                | Block::Columns(_)
                | Block::Together(_)),
                _,
            )) => self.height(std::slice::from_ref(block), level).min(self.bottom() - self.top - 60.0),
            Some((Block::Heading(_), after)) => 2.0 * line + self.lead(after, level),
            Some((Block::Text(Tone::Strong, words), after)) => {
                lines_high(self.count(Weight::Bold, words), self.size) + self.lead(after, level)
            }
            Some((Block::Text(_, words), _)) => {
                lines_high(self.count(Weight::Regular, words).min(3), self.size)
            }
            Some((Block::List(items), _)) => {
                self.height(&[Block::List(items.iter().take(1).cloned().collect())], level)
            }
            Some((Block::Ticks { items, .. }, _)) => {
                self.height(&[Block::List(items.iter().take(1).map(|one| one.text.clone()).collect())], level)
            }
            Some(_) => 3.0 * line,
        }
    }

    fn block(&mut self, block: &Block, level: u8, with: f32, nodes: &mut Vec<Node>) {
        let size = self.size;
        match block {
            Block::Heading(title) => nodes.push(self.heading(level, false, title, with)),
            Block::Text(tone, words) => {
                let (weight, size) = match tone {
                    Tone::Lead => (Weight::Bold, size.max(11.0) + 1.0),
                    Tone::Strong => (Weight::Bold, size),
                    Tone::Plain => (Weight::Regular, size),
                    Tone::Small => (Weight::Regular, if size > 12.0 { 11.0 } else { size - 0.5 }),
                };
                if *tone == Tone::Strong {
                    self.need(lines_high(self.count(weight, words), size) + with);
                }
                nodes.push(self.paragraph(weight, size, words));
            }
            Block::Keys(entries) => {
                let face = self.fonts.face(Weight::Bold);
                let widest = entries.iter().map(|one| face.width(&one.name, size)).fold(0.0, f32::max);
                let indent = (widest + 12.0).min(self.width * 0.4);
                let items =
                    entries.iter().map(|one| self.item(&one.name, Weight::Bold, indent, &one.said)).collect();
                self.y += size * 0.4;
                nodes.push(Node::group(Tag::L(ListNumbering::None), items));
            }
            Block::Entries(entries) => {
                let items = entries.iter().map(|one| self.entry(one)).collect();
                self.y += size * 0.4;
                nodes.push(Node::group(Tag::L(ListNumbering::None), items));
            }
            Block::List(items) => {
                let each: Vec<_> = items.iter().map(|item| ("\u{2022}".to_owned(), item.clone())).collect();
                let items = self.items(size * 1.3, &each);
                self.y += size * 0.4;
                nodes.push(Node::group(Tag::L(ListNumbering::Disc), items));
            }
            Block::Ticks { boxes, items } => nodes.push(self.ticks(boxes, items)),
            Block::Blanks(rows) => {
                nodes.extend(rows.iter().map(|row| self.blanks(row)).collect::<Vec<_>>());
                self.y += size * 0.8;
            }
            Block::Square { label, lines } => nodes.push(self.square(label, *lines)),
            Block::Columns(parts) => self.beside(parts, level, nodes),
            Block::Together(inside) => {
                self.need(self.height(inside, level).min(self.bottom() - self.top - 1.0));
                nodes.extend(self.blocks(inside, level));
            }
            Block::Verbatim(lines) => {
                for line in lines.lines() {
                    let said = self.lines(Weight::Regular, size - 0.5, line);
                    nodes.push(Node::group(Tag::P, said));
                }
                self.y += size * 0.5;
            }
            Block::Table(table) => nodes.push(self.table(table)),
            Block::Frame { weight, title, inside } => self.framed(*weight, title, inside, level, nodes),
            Block::Figure(figure) => nodes.push(self.figure(&figure.scene)),
        }
    }

    fn ticks(&mut self, boxes: &[String], items: &[Tick]) -> Node {
        let label = |item: &Tick| {
            let sign = |place: usize| if item.ticked == Some(place) { '\u{2612}' } else { '\u{2610}' };
            if boxes.is_empty() {
                sign(0).to_string()
            } else {
                let each =
                    boxes.iter().enumerate().map(|(place, word)| format!("{}\u{a0}{word}", sign(place)));
                each.collect::<Vec<_>>().join("   ")
            }
        };
        let widest = label(&Tick::open(""));
        let indent = self.fonts.face(Weight::Regular).width(&widest, self.size) + self.size * 0.8;
        let each: Vec<_> = items.iter().map(|item| (label(item), item.text.clone())).collect();
        let list = self.items(indent, &each);
        self.y += self.size * 0.4;
        Node::group(Tag::L(ListNumbering::None), list)
    }

    /// An empty square with its label in a corner.
    fn square(&mut self, label: &str, lines: u8) -> Node {
        let high = f32::from(lines) * 14.0;
        let size = 7.5;
        self.space(self.size * 0.3);
        self.need(high);
        self.ask(label);
        let (left, top, right) = (self.left, self.y, self.left + self.width);
        self.decoration(vec![Op::frame(left, top, right, top + high, 0.8)]);
        let words = self.text((left + 5.0, top + size + 3.0), Weight::Regular, size, label);
        self.y += high + self.size * 0.7;
        Node::group(Tag::P, vec![words])
    }

    /// A frame: whole on one page where it can be, else a frame on each.
    fn framed(&mut self, weight: Frame, title: &str, inside: &[Block], level: u8, nodes: &mut Vec<Node>) {
        let pen = if weight == Frame::Thin { 0.8 } else { 2.6 };
        let pad = self.size.max(9.5) * 0.85;
        let body = self.indented(pad + 1.0, true, |column| {
            let mut scratch = column.scratch();
            if !title.is_empty() {
                scratch.heading_here(level, false, title, 0.0);
            }
            scratch.y + column.height(inside, level + 1)
        });
        self.space(self.size * 0.3);
        self.need((body + 2.0 * pad).min(self.bottom() - self.top - 1.0));
        let (first, from) = (self.pages.len().saturating_sub(1), self.y);
        self.y += pad * 0.8;
        self.indented(pad + 1.0, true, |column| {
            if weight == Frame::Black {
                column.band(title, level, from, pad);
            }
            if title.is_empty() {
                nodes.extend(column.blocks(inside, level));
                return;
            }
            // The frame's padding stands for the space above a heading.
            let slot = column.slots;
            let heading = column.heading_here(level, false, title, 0.0);
            nodes.push(heading);
            if weight == Frame::Black {
                column.whiten(slot);
                column.y += pad * 0.5;
            }
            nodes.extend(column.blocks(inside, level + 1));
        });
        self.y += pad * 0.35;
        let (last, to) = (self.pages.len().saturating_sub(1), self.y);
        let (left, right) = (self.left, self.left + self.width);
        for page in first..=last {
            let top = if page == first { from } else { self.top - 2.0 };
            let bottom = if page == last { to } else { self.bottom() };
            self.decoration_on(page, vec![Op::frame(left, top, right, bottom, pen)]);
        }
        self.y += self.size * 0.7;
    }

    /// The black band behind a frame's title; the column is already narrowed by the frame's padding.
    fn band(&mut self, title: &str, level: u8, from: f32, pad: f32) {
        let mut scratch = self.scratch();
        scratch.heading_here(level, false, title, 0.0);
        let high = scratch.y + pad * 1.1;
        let (left, right) = (self.left - pad - 1.0, self.left + self.width + pad + 1.0);
        let points = vec![(left, from), (right, from), (right, from + high), (left, from + high)];
        self.decoration(vec![Op::Path { points, closed: true, fill: Some(0), pen: None }]);
    }
}
