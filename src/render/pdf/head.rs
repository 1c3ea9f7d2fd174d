//! Owns the head of every page.

use super::display::{Mark, MarkKind, Op};
use super::fonts::{Fonts, Weight};
use super::layout::{Layout, MARGIN};
use crate::render::sheet::Head;

/// Letters of the head, points.
const SIZE: f32 = 8.5;
/// From baseline to baseline, points.
const STEP: f32 = 11.0;
/// The first baseline, points from the upper edge.
const FIRST: f32 = 38.0;

/// The longest page number that is reckoned with.
const WIDEST: &str = " \u{b7} page 888 of 888";

/// Lines of the bold words, beside or above the plain ones.
fn bold_lines(fonts: &Fonts, head: &Head, width: f32) -> Vec<String> {
    let plain = fonts.face(Weight::Regular).width(&format!("{}{WIDEST}", head.plain), SIZE);
    fonts.face(Weight::Bold).wrap(&head.bold, SIZE, (width - plain - 12.0).max(width * 0.3))
}

/// Where the body of a page begins under the head.
pub(super) fn top(fonts: &Fonts, head: &Head, paper_width: f32) -> f32 {
    let lines = bold_lines(fonts, head, paper_width - 2.0 * MARGIN);
    FIRST + lines.iter().fold(0.0, |high, _| high + STEP) + 8.0
}

impl Layout<'_> {
    /// Puts the head on every page, once their number is known.
    pub(super) fn heads(&mut self, head: &Head) {
        self.ask(&head.bold);
        self.ask(&head.plain);
        let width = self.paper.0 - 2.0 * MARGIN;
        let lines = bold_lines(self.fonts, head, width);
        let count = self.pages.len();
        let right = MARGIN + width;
        let rule = self.top - 12.0;
        for (place, page) in self.pages.iter_mut().enumerate() {
            let plain = format!("{} \u{b7} page {} of {count}", head.plain, place + 1);
            let wide = self.fonts.face(Weight::Regular).width(&plain, SIZE);
            let mut ops = Vec::new();
            let mut y = FIRST;
            for line in &lines {
                ops.push(Op::text((MARGIN, y), Weight::Bold, SIZE, line));
                y += STEP;
            }
            ops.push(Op::text((right - wide, y - STEP), Weight::Regular, SIZE, &plain));
            ops.push(Op::line((MARGIN, rule), (right, rule), 0.5));
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
