//! Owns blocks that stand beside one another.

use super::display::Node;
use super::layout::Layout;
use crate::document::Part;

/// Between two columns, points.
const GAP: f32 = 14.0;

impl Layout<'_> {
    /// The columns beside one another where all of them fit on a page, else under one another.
    pub(super) fn beside(&mut self, parts: &[Part], level: u8, nodes: &mut Vec<Node>) {
        let shares: f32 = parts.iter().map(|part| f32::from(part.share)).sum();
        let gaps = parts.iter().skip(1).fold(0.0, |sum, _| sum + GAP);
        let (left, width) = (self.left, self.width);
        let wide = |part: &Part| (width - gaps) * f32::from(part.share) / shares.max(1.0);
        let highest = parts
            .iter()
            .map(|part| self.column(left, wide(part), |column| column.height(&part.blocks, level)))
            .fold(0.0, f32::max);
        if highest > self.bottom() - self.top - 1.0 {
            for part in parts {
                nodes.extend(self.blocks(&part.blocks, level));
            }
            return;
        }
        self.need(highest);
        let (top, mut x, mut lowest) = (self.y, left, self.y);
        for part in parts {
            let here = wide(part);
            self.y = top;
            nodes.extend(self.column(x, here, |column| column.blocks(&part.blocks, level)));
            lowest = lowest.max(self.y);
            x += here + GAP;
        }
        self.y = lowest;
    }

    /// Runs `inside` in a column of its own.
    fn column<T>(&mut self, left: f32, width: f32, inside: impl FnOnce(&mut Self) -> T) -> T {
        let before = (self.left, self.width);
        (self.left, self.width) = (left, width);
        let made = inside(self);
        (self.left, self.width) = before;
        made
    }
}
