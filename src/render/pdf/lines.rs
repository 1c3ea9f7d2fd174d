//! Owns paragraphs, headings and labelled lines.

use std::num::NonZeroU16;

use krilla::tagging::Tag;

use super::display::{Node, Op};
use super::fonts::Weight;
use super::layout::{Bookmark, Layout, step};
use crate::document::{Blank, Entry};

/// Letters of a heading, points, by the height of the body's letters.
fn heading_size(body: f32, of_leaf: bool) -> f32 {
    match of_leaf {
        true if body > 12.0 => 21.0,
        true => 15.0,
        false if body > 12.0 => 15.5,
        false => (body + 2.0).min(11.5),
    }
}

impl Layout<'_> {
    /// Wrapped text at the present height, one content mark a line; advances.
    pub(super) fn lines(&mut self, weight: Weight, size: f32, text: &str) -> Vec<Node> {
        self.ask(text);
        let step = step(size);
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
        self.space(self.size * 0.8);
        self.heading_here(level, of_leaf, title, with)
    }

    /// A heading without space above it.
    pub(super) fn heading_here(&mut self, level: u8, of_leaf: bool, title: &str, with: f32) -> Node {
        let size = heading_size(self.size, of_leaf);
        let high = lines_high(self.fonts.face(Weight::Bold).wrap(title, size, self.width).len(), size);
        self.need(high + with);
        let page = self.pages.len().saturating_sub(1);
        self.outline.push(Bookmark { of_leaf, title: title.to_owned(), page, y: self.y });
        let nodes = self.lines(Weight::Bold, size, title);
        self.y += self.size * 0.35;
        let level = NonZeroU16::new(u16::from(level)).unwrap_or(NonZeroU16::MIN);
        Node::group(Tag::Hn(level, Some(title.to_owned())), nodes)
    }

    /// A label in a column of its own, and texts beside it; both as an item of a list.
    pub(super) fn item(&mut self, label: &str, weight: Weight, indent: f32, texts: &[String]) -> Node {
        let size = self.size;
        self.ask(label);
        let face = self.fonts.face(Weight::Regular);
        let count: usize = texts.iter().map(|text| face.wrap(text, size, self.width - indent).len()).sum();
        let names = self.fonts.face(weight).wrap(label, size, indent.max(size) - 4.0);
        self.need(lines_high(count.clamp(names.len(), 3.max(names.len())), size));
        let from = self.y;
        let mut said = Vec::new();
        for (line, place) in names.iter().zip(0_u16..) {
            let at = (self.left, from + size + f32::from(place) * step(size));
            said.push(self.text(at, weight, size, &format!("{} ", line.trim_end())));
        }
        let page = self.pages.len();
        let body = self.indented(indent, false, |inside| {
            texts.iter().flat_map(|text| inside.lines(Weight::Regular, size, text)).collect()
        });
        if self.pages.len() == page {
            self.y = self.y.max(from + lines_high(names.len(), size));
        }
        self.y += size * 0.22;
        Node::group(Tag::LI, vec![Node::group(Tag::Lbl, said), Node::group(Tag::LBody, body)])
    }

    /// A name in bold and what is said of it behind it, in one run of text; further lines under it.
    pub(super) fn entry(&mut self, entry: &Entry) -> Node {
        let size = self.size;
        self.ask(&entry.name);
        let name = if entry.name.is_empty() { String::new() } else { format!("{}: ", entry.name) };
        let wide = self.fonts.face(Weight::Bold).width(&name, size);
        if wide > self.width * 0.6 {
            return self.item(&name, Weight::Bold, self.width * 0.4, &entry.said);
        }
        let mut label = Vec::new();
        let mut body = Vec::new();
        for (place, text) in entry.said.iter().enumerate() {
            self.ask(text);
            let indent = if place == 0 { wide } else { size };
            let face = self.fonts.face(Weight::Regular);
            // The first line is shorter by the name.
            let first = face.wrap(text, size, self.width - indent);
            let (head, rest) = match first.split_first() {
                Some((head, rest)) => (head.clone(), rest.concat()),
                None => (String::new(), String::new()),
            };
            let after = if rest.is_empty() { Vec::new() } else { face.wrap(&rest, size, self.width - size) };
            if place == 0 {
                self.need(lines_high((1 + after.len()).min(3), size));
            } else {
                self.need(step(size));
            }
            let baseline = self.y + size;
            if place == 0 && !name.is_empty() {
                label.push(self.text((self.left, baseline), Weight::Bold, size, &name));
            }
            if !head.is_empty() {
                body.push(self.text((self.left + indent, baseline), Weight::Regular, size, &head));
            }
            self.y += step(size);
            for line in after {
                self.need(step(size));
                let at = (self.left + size, self.y + size);
                body.push(self.text(at, Weight::Regular, size, &line));
                self.y += step(size);
            }
        }
        self.y += size * 0.22;
        let mut parts = Vec::new();
        if !label.is_empty() {
            parts.push(Node::group(Tag::Lbl, label));
        }
        parts.push(Node::group(Tag::LBody, body));
        Node::group(Tag::LI, parts)
    }

    /// Items, each with its label; a last one of one line is not left alone on a page.
    pub(super) fn items(&mut self, indent: f32, items: &[(String, String)]) -> Vec<Node> {
        let size = self.size;
        let mut nodes = Vec::with_capacity(items.len());
        let mut rest = items;
        while let Some(((label, item), after)) = rest.split_first() {
            if let [(_, last)] = after {
                let face = self.fonts.face(Weight::Regular);
                let count = |text: &str| face.wrap(text, size, self.width - indent).len();
                if count(last) == 1 {
                    self.need(lines_high(count(item) + 1, size) + size * 0.6);
                }
            }
            nodes.push(self.item(label, Weight::Regular, indent, std::slice::from_ref(item)));
            rest = after;
        }
        nodes
    }

    /// A row of labels, each with a line to write on; what is known stands on the line.
    pub(super) fn blanks(&mut self, row: &[Blank]) -> Node {
        let size = self.size;
        let high = size * 1.25 + 9.0;
        self.need(high);
        let gap = 14.0;
        let gaps = row.iter().skip(1).fold(0.0, |sum, _| sum + gap);
        let shares: f32 = row.iter().map(|blank| f32::from(blank.share)).sum();
        let baseline = self.y + high - 3.0;
        let mut x = self.left;
        let mut nodes = Vec::new();
        for blank in row {
            let share = (self.width - gaps) * f32::from(blank.share) / shares.max(1.0);
            self.ask(&blank.label);
            self.ask(&blank.value);
            let face = self.fonts.face(Weight::Regular);
            let from = (x + face.width(&blank.label, size) + 4.0).min(x + share - 20.0);
            nodes.push(self.text((x, baseline), Weight::Regular, size, &format!("{} ", blank.label)));
            if !blank.value.is_empty() {
                let at = (from + 2.0, baseline);
                nodes.push(self.text(at, Weight::Bold, size, &format!("{} ", blank.value)));
            }
            self.decoration(vec![Op::line((from, baseline + 2.0), (x + share, baseline + 2.0), 0.6)]);
            x += share + gap;
        }
        self.y += high;
        Node::group(Tag::P, nodes)
    }
}

/// Height of so many lines.
pub(super) fn lines_high(count: usize, size: f32) -> f32 {
    f32::from(u16::try_from(count).unwrap_or(u16::MAX)) * step(size)
}
