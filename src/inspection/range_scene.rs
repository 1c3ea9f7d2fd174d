//! Owns the same drawing as shapes, for a page: one for each measure, so that a page may end between them.

use super::range_lines::{reach, said};
use crate::anatomy::Landmark;
use crate::document::{Anchor, Ink, Scene, Shape};
use crate::garment::Chart;
use crate::words;

/// Width of the drawing, points: its letters can still be read on a telephone.
const WIDTH: f64 = 380.0;
/// Room for the figures of a range, points.
const FIGURES: f64 = 70.0;
/// Width of one letter of a size's label, at most, points.
const LETTER: f64 = 5.6;
/// Most room for the labels of sizes, points.
const LABELS: f64 = 150.0;
/// Height of one size's row, points.
const ROW: f64 = 14.0;
/// Height of the letters, points.
const LETTERS: f64 = 9.0;

/// The ranges of each measure over all sizes.
pub fn range_scenes(chart: &Chart) -> Vec<Scene> {
    chart.measures().into_iter().filter_map(|landmark| of_measure(chart, landmark)).collect()
}

fn of_measure(chart: &Chart, landmark: Landmark) -> Option<Scene> {
    let (from, to) = reach(chart, landmark)?;
    let letters = chart.sizes.iter().map(|size| size.label.chars().count()).max().unwrap_or_default();
    let left = (LETTER * f64::from(u16::try_from(letters).unwrap_or(u16::MAX))).clamp(20.0, LABELS) + FIGURES;
    let (low_cm, high_cm) = (words::cm_of_tenths(from), words::cm_of_tenths(to));
    let place = |tenths: i64| {
        left + (WIDTH - left - 4.0) * (words::cm_of_tenths(tenths) - low_cm) / (high_cm - low_cm)
    };
    let mut y = LETTERS;
    let mut shapes = vec![
        Shape::Label {
            at: (0.0, y),
            anchor: Anchor::Start,
            size: LETTERS,
            bold: true,
            text: format!("{}, cm", words::label(landmark)),
        },
        Shape::label(
            (place(to), y),
            Anchor::End,
            LETTERS,
            format!("{} to {}", words::cm_short(from), words::cm_short(to)),
        ),
    ];
    let mut ranges = Vec::new();
    for size in &chart.sizes {
        let Some(range) = size.range_at(landmark) else { continue };
        y += ROW;
        let (start, end) = (place(range.low.unwrap_or(from)), place(range.high.unwrap_or(to)));
        shapes.push(Shape::label((0.0, y), Anchor::Start, LETTERS, size.label.as_str()));
        shapes.push(Shape::label((left - 8.0, y), Anchor::End, LETTERS, said(range)));
        let (top, bottom) = (y - LETTERS + 1.0, y + 1.0);
        let line = vec![(left, bottom), (place(to), bottom)];
        shapes.push(Shape::area(line, Ink::Clear, 0.2));
        let corners = vec![(start, top), (end, top), (end, bottom), (start, bottom)];
        shapes.push(Shape::area(corners, Ink::Light, 0.7));
        ranges.push(format!("{} {}", size.label, said(range)));
    }
    Some(Scene {
        width: WIDTH,
        height: y + 6.0,
        title: format!("Ranges of {} {}", chart.label, words::at(landmark)),
        description: format!("{}: {} cm.", words::label(landmark), ranges.join(", ")),
        shapes,
    })
}
