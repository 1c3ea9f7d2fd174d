//! Owns paragraphs, headings and labelled lines.

use std::num::NonZeroU16;

use krilla::tagging::Tag;

use super::display::{Node, Op};
use super::fonts::Weight;
use super::layout::{Entry, LEADING, Layout};

/// Letters of a heading of the level, in heights of the body's letters.
fn heading_size(body: f32, level: u8, of_leaf: bool) -> f32 {
    match (of_leaf, level) {
        (true, 1) => 17.0,
        (true, _) => 21.0,
        (false, _) if body > 12.0 => 15.5,
        (false, _) => 12.0,
    }
}

impl Layout<'_> {
    /// Wrapped text at the present height, one content mark a line; advances.
    pub(super) fn lines(&mut self, weight: Weight, size: f32, text: &str) -> Vec<Node> {
        self.ask(text);
        let step = size * LEADING;
        let lines = self.fonts.face(weight).wrap(text, size, self.width);
        let mut nodes = Vec::with_capacity(lines.len());
        for line in lines {
            self.need(step);
            let at = (self.left, self.y + size);
            if !line.is_empty() {
                nodes.push(self.text(at, weight, size, &line));
            }
            self.y += step;
        }
        nodes
    }

    /// A paragraph.
    pub(super) fn paragraph(&mut self, weight: Weight, size: f32, text: &str) -> Node {
        // Two lines at least stand together.
        let few = self.fonts.face(weight).wrap(text, size, self.width).len().min(3);
        self.need(lines_high(few, size));
        let nodes = self.lines(weight, size, text);
        self.y += self.size * 0.5;
        Node::group(Tag::P, nodes)
    }

    /// A heading with its entry in the outline; `with` is the height that must follow on its page.
    pub(super) fn heading(&mut self, level: u8, of_leaf: bool, title: &str, with: f32) -> Node {
        let size = heading_size(self.size, level, of_leaf);
        self.space(self.size * 0.9);
        let high = lines_high(self.fonts.face(Weight::Bold).wrap(title, size, self.width).len(), size);
        self.need(high + with);
        let page = self.pages.len().saturating_sub(1);
        self.outline.push(Entry { of_leaf, title: title.to_owned(), page, y: self.y });
        let nodes = self.lines(Weight::Bold, size, title);
        self.y += self.size * 0.35;
        let level = NonZeroU16::new(u16::from(level)).unwrap_or(NonZeroU16::MIN);
        Node::group(Tag::Hn(level, Some(title.to_owned())), nodes)
    }

    /// A label in a column of its own, and a text beside it; both as an item of a list.
    pub(super) fn item(&mut self, label: &str, weight: Weight, indent: f32, text: &str) -> Node {
        let size = self.size;
        self.ask(label);
        let count = self.fonts.face(Weight::Regular).wrap(text, size, self.width - indent).len();
        self.need(lines_high(count.min(3), size));
        let at = (self.left, self.y + size);
        let label = self.text(at, weight, size, &format!("{label} "));
        let body = self.indented(indent, false, |inside| inside.lines(Weight::Regular, size, text));
        self.y += size * 0.26;
        Node::group(Tag::LI, vec![Node::group(Tag::Lbl, vec![label]), Node::group(Tag::LBody, body)])
    }

    /// Items under one label; a last one of one line is not left alone on a page.
    pub(super) fn items(&mut self, label: &str, indent: f32, items: &[String]) -> Vec<Node> {
        let size = self.size;
        let mut nodes = Vec::with_capacity(items.len());
        let mut rest = items;
        while let Some((item, after)) = rest.split_first() {
            if let [last] = after {
                let face = self.fonts.face(Weight::Regular);
                let count = |text: &str| face.wrap(text, size, self.width - indent).len();
                if count(last) == 1 {
                    self.need(lines_high(count(item) + 1, size) + size * 0.6);
                }
            }
            nodes.push(self.item(label, Weight::Regular, indent, item));
            rest = after;
        }
        nodes
    }

    /// A row of labels, each with a line to write on.
    pub(super) fn blanks(&mut self, labels: &[String]) -> Node {
        let size = self.size;
        let high = size * 1.25 + 11.0;
        self.need(high);
        let gap = 16.0;
        let count = labels.iter().fold(0.0_f32, |count, _| count + 1.0).max(1.0);
        let share = (self.width - gap * (count - 1.0)) / count;
        let baseline = self.y + high - 3.0;
        let mut x = self.left;
        let mut nodes = Vec::new();
        for label in labels {
            self.ask(label);
            let wide = self.fonts.face(Weight::Regular).width(label, size);
            nodes.push(self.text((x, baseline), Weight::Regular, size, &format!("{label} ")));
            let from = (x + wide + 5.0).min(x + share - 20.0);
            self.decoration(vec![Op::line((from, baseline + 1.5), (x + share, baseline + 1.5), 0.6)]);
            x += share + gap;
        }
        self.y += high;
        Node::group(Tag::P, nodes)
    }
}

/// Height of so many lines.
pub(super) fn lines_high(count: usize, size: f32) -> f32 {
    f32::from(u16::try_from(count).unwrap_or(u16::MAX)) * size * LEADING
}
