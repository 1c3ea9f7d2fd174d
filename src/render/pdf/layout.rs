//! Owns the pages while they fill: the place on the page, page breaks, marks and their slots.

use std::collections::BTreeMap;

use super::display::{Mark, MarkKind, Node, Op, Slot};
use super::fonts::{Fonts, Weight};
use crate::render::Paper;

/// Left and right margin, points.
pub(super) const MARGIN: f32 = 40.0;
/// Lower margin, points.
const FOOT: f32 = 30.0;
/// From baseline to baseline, points; large letters need less between their lines.
pub(super) fn step(size: f32) -> f32 {
    size * if size > 12.0 { 1.24 } else { 1.3 }
}

/// Where an entry of the outline points to.
#[derive(Clone, Debug)]
pub(super) struct Bookmark {
    /// Whether it is the title of a leaf.
    pub(super) of_leaf: bool,
    pub(super) title: String,
    pub(super) page: usize,
    pub(super) y: f32,
}

/// The pages laid out so far.
pub(super) struct Layout<'f> {
    pub(super) fonts: &'f Fonts,
    /// Width and height of the paper.
    pub(super) paper: (f32, f32),
    /// Where the body of a page begins.
    pub(super) top: f32,
    pub(super) pages: Vec<Vec<Mark>>,
    /// The present height on the last page.
    pub(super) y: f32,
    /// Left end of the present column.
    pub(super) left: f32,
    /// Width of the present column.
    pub(super) width: f32,
    /// Height of the body's letters.
    pub(super) size: f32,
    pub(super) slots: usize,
    pub(super) outline: Vec<Bookmark>,
    /// Characters that cannot be set, each with a text it stands in.
    pub(super) missing: BTreeMap<char, String>,
}

impl<'f> Layout<'f> {
    /// Empty pages.
    pub(super) fn new(fonts: &'f Fonts, paper: Paper, top: f32) -> Self {
        let paper = match paper {
            // ISO 216 and 8.5 by 11 inches, in points of 1/72 inch.
            Paper::A4 => (595.276, 841.89),
            Paper::Letter => (612.0, 792.0),
        };
        Self {
            fonts,
            paper,
            top,
            pages: Vec::new(),
            y: top,
            left: MARGIN,
            width: paper.0 - 2.0 * MARGIN,
            size: 9.0,
            slots: 0,
            outline: Vec::new(),
            missing: BTreeMap::new(),
        }
    }

    /// One endless page with the same column, to measure on.
    pub(super) fn scratch(&self) -> Self {
        Self {
            paper: (self.paper.0, 1.0e7),
            pages: vec![Vec::new()],
            y: 0.0,
            outline: Vec::new(),
            missing: BTreeMap::new(),
            ..*self
        }
    }

    /// The lowest place for content.
    pub(super) fn bottom(&self) -> f32 {
        self.paper.1 - FOOT
    }

    /// Starts a page.
    pub(super) fn page_break(&mut self) {
        self.pages.push(Vec::new());
        self.y = self.top;
    }

    /// Moves to the next page when `height` no longer fits, unless the page is still empty; whether it
    /// did.
    pub(super) fn need(&mut self, height: f32) -> bool {
        let full = self.y + height > self.bottom() && self.y > self.top + 0.5;
        if full {
            self.page_break();
        }
        full
    }

    /// Adds space, but not at the head of a page.
    pub(super) fn space(&mut self, height: f32) {
        if self.y > self.top + 0.5 {
            self.y += height;
        }
    }

    fn push(&mut self, kind: MarkKind, ops: Vec<Op>) {
        if self.pages.is_empty() {
            self.pages.push(Vec::new());
        }
        if let Some(page) = self.pages.last_mut() {
            page.push(Mark { kind, ops });
        }
    }

    fn slot(&mut self) -> Slot {
        self.slots += 1;
        Slot(self.slots - 1)
    }

    /// Remembers characters that cannot be set.
    pub(super) fn ask(&mut self, text: &str) {
        if let Some(letter) = self.fonts.unprintable(text) {
            self.missing.entry(letter).or_insert_with(|| text.to_owned());
        }
    }

    /// One line of text, as content.
    pub(super) fn text(&mut self, at: (f32, f32), weight: Weight, size: f32, text: &str) -> Node {
        let slot = self.slot();
        self.push(MarkKind::Text(slot), vec![Op::text(at, weight, size, text)]);
        Node::Leaf(slot)
    }

    /// Other content.
    pub(super) fn graphic(&mut self, ops: Vec<Op>) -> Node {
        let slot = self.slot();
        self.push(MarkKind::Graphic(slot), ops);
        Node::Leaf(slot)
    }

    /// Sets the text of all slots from `first` on in white, for black ground.
    pub(super) fn whiten(&mut self, first: usize) {
        for mark in self.pages.last_mut().into_iter().flatten() {
            let MarkKind::Text(Slot(slot)) = mark.kind else { continue };
            for op in mark.ops.iter_mut().filter(|_| slot >= first) {
                if let Op::Text { grey, .. } = op {
                    *grey = 255;
                }
            }
        }
    }

    /// What is not content.
    pub(super) fn decoration(&mut self, ops: Vec<Op>) {
        self.push(MarkKind::Decoration, ops);
    }

    /// Narrows the column for as long as `inside` runs.
    pub(super) fn indented<T>(&mut self, by: f32, both: bool, inside: impl FnOnce(&mut Self) -> T) -> T {
        let (left, width) = (self.left, self.width);
        self.left += by;
        self.width -= if both { 2.0 * by } else { by };
        let made = inside(self);
        (self.left, self.width) = (left, width);
        made
    }
}
