//! Owns the drawing on a page.

use krilla::geom::Rect;
use krilla::tagging::{BBox, Tag};

use super::display::{Node, Op, Pen};
use super::fonts::{Fonts, Weight};
use super::layout::Layout;
use crate::document::{Anchor, Scene, Shape};

/// A length of a drawing as the writer takes it, to a hundredth of a point.
#[expect(clippy::cast_possible_truncation, reason = "a place on a page is far within the range of f32")]
fn points(value: f64) -> f32 {
    ((value * 100.0).round() / 100.0) as f32
}

impl Layout<'_> {
    /// The drawing at its own size, or smaller where the column is narrower.
    pub(super) fn figure(&mut self, scene: &Scene) -> Node {
        let scale = (self.width / points(scene.width)).min(1.0);
        let (wide, high) = (points(scene.width) * scale, points(scene.height) * scale);
        self.need(high);
        for shape in &scene.shapes {
            if let Shape::Label { text, .. } = shape {
                self.ask(text);
            }
        }
        let (left, top) = (self.left, self.y);
        let place = |(x, y): (f64, f64)| (left + points(x) * scale, top + points(y) * scale);
        let ops = scene.shapes.iter().map(|shape| op(self.fonts, shape, scale, place)).collect();
        let leaf = self.graphic(ops);
        self.y += high + self.size * 0.5;
        let page = self.pages.len().saturating_sub(1);
        let frame = Rect::from_xywh(left, top, wide, high).map(|rect| BBox::new(page, rect));
        let words = format!("{}. {}", scene.title, scene.description);
        Node::group(Tag::Figure(Some(words)).with_bbox(frame), vec![leaf])
    }
}

fn op(fonts: &Fonts, shape: &Shape, scale: f32, place: impl Fn((f64, f64)) -> (f32, f32)) -> Op {
    match shape {
        Shape::Path { points: all, closed, fill, pen } => Op::Path {
            points: all.iter().copied().map(place).collect(),
            closed: *closed,
            fill: fill.grey(),
            pen: pen.map(|pen| Pen {
                width: points(pen.width) * scale,
                dash: pen.dash.map(|dash| points(dash) * scale),
            }),
        },
        Shape::Label { at, anchor, size, bold, text } => {
            let weight = if *bold { Weight::Bold } else { Weight::Regular };
            let size = points(*size) * scale;
            let wide = fonts.face(weight).width(text, size);
            let (x, y) = place(*at);
            let start = match anchor {
                Anchor::Start => x,
                Anchor::Middle => x - wide / 2.0,
                Anchor::End => x - wide,
            };
            Op::text((start, y), weight, size, text)
        }
    }
}
