//! Owns each block on the page, and what keeps company with what.

use krilla::tagging::{ListNumbering, Tag};

use super::display::{Node, Op};
use super::fonts::Weight;
use super::layout::Layout;
use super::lines::lines_high;
use crate::render::sheet::{Block, Tone, Weight as Frame};

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
    fn height(&self, blocks: &[Block], level: u8) -> f32 {
        let mut scratch = self.scratch();
        scratch.blocks(blocks, level);
        scratch.y
    }

    /// The least of the next block that should follow on the same page.
    fn lead(&self, blocks: &[Block], level: u8) -> f32 {
        let line = lines_high(1, self.size);
        match blocks.split_first() {
            None => 0.0,
            Some((Block::Table(table), _)) => self.table_lead(table),
            Some((block @ (Block::Figure(_) | Block::Frame { .. }), _)) => {
                self.height(std::slice::from_ref(block), level).min(self.bottom() - self.top - 60.0)
            }
            Some((Block::Heading(_) | Block::Text(Tone::Strong, _), after)) => {
                2.0 * line + self.lead(after, level)
            }
            Some((Block::List(items) | Block::Ticks { items, .. }, _)) => {
                let first = Block::List(items.iter().take(1).cloned().collect());
                self.height(&[first], level)
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
                    Tone::Small => (Weight::Regular, size - 0.5),
                };
                if *tone == Tone::Strong {
                    self.need(lines_high(2, size) + with);
                }
                nodes.push(self.paragraph(weight, size, words));
            }
            Block::Keys(pairs) => {
                let face = self.fonts.face(Weight::Bold);
                let widest = pairs.iter().map(|(name, _)| face.width(name, size)).fold(0.0, f32::max);
                let indent = (widest + 12.0).min(self.width / 2.0);
                let items =
                    pairs.iter().map(|(name, value)| self.item(name, Weight::Bold, indent, value)).collect();
                self.y += size * 0.4;
                nodes.push(Node::group(Tag::L(ListNumbering::None), items));
            }
            Block::List(items) => {
                let items = self.items("\u{2022}", size * 1.3, items);
                self.y += size * 0.4;
                nodes.push(Node::group(Tag::L(ListNumbering::Disc), items));
            }
            Block::Ticks { boxes, items } => nodes.push(self.ticks(boxes, items)),
            Block::Blanks(rows) => {
                nodes.extend(rows.iter().map(|row| self.blanks(row)).collect::<Vec<_>>());
                self.y += size * 0.95;
            }
            Block::Table(table) => nodes.push(self.table(table)),
            Block::Frame { weight, title, inside } => self.framed(*weight, title, inside, level, nodes),
            Block::Figure(scene) => nodes.push(self.figure(scene)),
        }
    }

    fn ticks(&mut self, boxes: &[&str], items: &[String]) -> Node {
        let label = if boxes.is_empty() {
            "\u{2610}".to_owned()
        } else {
            boxes.iter().map(|word| format!("\u{2610} {word}")).collect::<Vec<_>>().join("   ")
        };
        let indent = self.fonts.face(Weight::Regular).width(&label, self.size) + self.size;
        let list = self.items(&label, indent, items);
        self.y += self.size * 0.4;
        Node::group(Tag::L(ListNumbering::None), list)
    }

    /// A frame: whole on one page where it can be, else a frame on each.
    fn framed(&mut self, weight: Frame, title: &str, inside: &[Block], level: u8, nodes: &mut Vec<Node>) {
        let pen = if weight == Frame::Thin { 0.8 } else { 2.6 };
        let pad = self.size.max(9.5) * 0.85;
        let body = self.indented(pad + 1.0, true, |column| {
            let mut scratch = column.scratch();
            scratch.heading(level, false, title, 0.0);
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
            // The frame's padding stands for the space above a heading.
            column.y -= column.size * 0.9;
            let slot = column.slots;
            let heading = column.heading(level, false, title, 0.0);
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
        scratch.heading(level, false, title, 0.0);
        let high = scratch.y + pad * 1.1;
        let (left, right) = (self.left - pad - 1.0, self.left + self.width + pad + 1.0);
        let points = vec![(left, from), (right, from), (right, from + high), (left, from + high)];
        self.decoration(vec![Op::Path { points, closed: true, fill: Some(0), pen: None }]);
    }
}
