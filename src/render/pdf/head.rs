//! Owns the head of every page.

use super::display::{Mark, MarkKind, Op};
use super::fonts::{Fonts, Weight};
use super::layout::{Layout, MARGIN};
use crate::document::{Head, Leaf, Sheet};

/// Letters of the head, points.
const SIZE: f32 = 8.5;
/// From baseline to baseline, points.
const STEP: f32 = 11.0;
/// The first baseline, points from the upper edge.
const FIRST: f32 = 34.0;

/// The greatest page number that is reckoned with.
const MOST: usize = 88;

/// Lines of the bold words, beside or above the plain ones.
fn bold_lines(fonts: &Fonts, leaf: &Leaf, width: f32) -> Vec<String> {
    let plain = plain(&leaf.head, &leaf.number(MOST, MOST));
    let wide = fonts.face(Weight::Regular).width(&plain, SIZE);
    fonts.face(Weight::Bold).wrap(&leaf.head.bold, SIZE, (width - wide - 12.0).max(width * 0.3))
}

fn plain(head: &Head, number: &str) -> String {
    format!("{} \u{b7} {number}", head.plain)
}

/// Where the body of a page begins under the head.
pub(super) fn top(fonts: &Fonts, sheet: &Sheet, paper_width: f32) -> f32 {
    let width = paper_width - 2.0 * MARGIN;
    let most = sheet.leaves.iter().map(|leaf| bold_lines(fonts, leaf, width).len()).max();
    FIRST + (0..most.unwrap_or(1)).fold(0.0, |high, _| high + STEP) + 6.0
}

impl Layout<'_> {
    /// Puts the head on one page.
    pub(super) fn head(&mut self, leaf: &Leaf, page: usize, number: &str) {
        self.ask(&leaf.head.bold);
        self.ask(&leaf.head.plain);
        let width = self.paper.0 - 2.0 * MARGIN;
        let lines = bold_lines(self.fonts, leaf, width);
        let right = MARGIN + width;
        let rule = self.top - 10.0;
        let plain = plain(&leaf.head, number);
        let wide = self.fonts.face(Weight::Regular).width(&plain, SIZE);
        let mut ops = Vec::new();
        let mut y = FIRST;
        for line in &lines {
            ops.push(Op::text((MARGIN, y), Weight::Bold, SIZE, line));
            y += STEP;
        }
        ops.push(Op::text((right - wide, y - STEP), Weight::Regular, SIZE, &plain));
        ops.push(Op::line((MARGIN, rule), (right, rule), 0.5));
        if let Some(page) = self.pages.get_mut(page) {
            page.insert(0, Mark { kind: MarkKind::Head, ops });
        }
    }

    /// Adds what is not content to a page already laid out.
    pub(super) fn decoration_on(&mut self, page: usize, ops: Vec<Op>) {
        if let Some(page) = self.pages.get_mut(page) {
            page.push(Mark { kind: MarkKind::Decoration, ops });
        }
    }
}
