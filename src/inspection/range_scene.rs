//! Owns the same drawing as shapes, for a page.

use super::range_lines::{reach, said};
use crate::document::{Anchor, Ink, Scene, Shape};
use crate::garment::Chart;
use crate::words;

/// Width of the drawing, points.
const WIDTH: f64 = 480.0;
/// Where the bars begin, points.
const LEFT: f64 = 150.0;
/// Height of one size's row, points.
const ROW: f64 = 14.0;
/// Height of the letters, points.
const LETTERS: f64 = 9.0;

/// The ranges of every measure over all sizes.
pub fn range_scene(chart: &Chart) -> Scene {
    let mut shapes = Vec::new();
    let mut y = 0.0;
    let mut said_of = Vec::new();
    for landmark in chart.measures() {
        let Some((from, to)) = reach(chart, landmark) else { continue };
        let (low_cm, high_cm) = (words::cm_of_tenths(from), words::cm_of_tenths(to));
        let place = |tenths: i64| {
            LEFT + (WIDTH - LEFT - 10.0) * (words::cm_of_tenths(tenths) - low_cm) / (high_cm - low_cm)
        };
        y += ROW + 4.0;
        shapes.push(Shape::Label {
            at: (0.0, y),
            anchor: Anchor::Start,
            size: LETTERS,
            bold: true,
            text: words::label(landmark),
        });
        shapes.push(Shape::label((place(from), y), Anchor::Start, LETTERS, words::cm_short(from)));
        shapes.push(Shape::label((place(to), y), Anchor::End, LETTERS, words::cm_short(to)));
        let mut ranges = Vec::new();
        for size in &chart.sizes {
            let Some(range) = size.range_at(landmark) else { continue };
            y += ROW;
            let (left, right) = (place(range.low.unwrap_or(from)), place(range.high.unwrap_or(to)));
            shapes.push(Shape::label((0.0, y), Anchor::Start, LETTERS, size.label.as_str()));
            shapes.push(Shape::label((LEFT - 8.0, y), Anchor::End, LETTERS, said(range)));
            let (top, bottom) = (y - LETTERS + 1.0, y + 1.0);
            let corners = vec![(left, top), (right, top), (right, bottom), (left, bottom)];
            shapes.push(Shape::area(corners, Ink::Light, 0.7));
            ranges.push(format!("{} {}", size.label, said(range)));
        }
        said_of.push(format!("{}: {} cm", words::label(landmark), ranges.join(", ")));
    }
    Scene {
        width: WIDTH,
        height: y + ROW,
        title: format!("Ranges of {}", chart.label),
        description: format!("{}.", said_of.join(". ")),
        shapes,
    }
}
