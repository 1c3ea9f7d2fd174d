//! Owns the limb's outline to scale, with the name and girth of each mark beside it.

use super::axis::{Along, spread};
use super::fall::spoken;
use super::{Anchor, Ink, Shape};
use crate::report::RecordMark;

/// Height of the labels' letters, points.
pub(super) const LETTERS: f64 = 8.0;
/// From label to label, points.
const GAP: f64 = 10.5;
/// Above and below the limb, points.
pub(super) const HEADROOM: f64 = 26.0;

/// The limb drawn.
pub(super) struct Outline {
    /// Its shapes.
    pub(super) shapes: Vec<Shape>,
    /// Distance along it.
    pub(super) along: Along,
    /// The height of its distal end.
    pub(super) bottom: f64,
    /// The height of its proximal end.
    pub(super) top: f64,
    /// Where the names end.
    pub(super) right: f64,
    /// Height of all, with its labels.
    pub(super) height: f64,
}

/// Width of the column of names, points.
const NAMES: f64 = 118.0;

/// Draws the marks, distal to proximal; none with fewer than two.
pub(super) fn outline(marks: &[RecordMark], limb: &str) -> Option<Outline> {
    let points: Vec<(f64, f64, &RecordMark)> = marks
        .iter()
        .filter_map(|mark| Some((mark.at_cm.as_ref()?.value, mark.girth_cm.as_ref()?.value, mark)))
        .collect();
    let (first, last) = (points.first()?, points.last()?);
    if points.len() < 2 {
        return None;
    }
    // Seen from the front a round limb is as wide as its girth over pi (derived).
    let wide = |girth: f64| girth / std::f64::consts::PI;
    let widest = points.iter().map(|(_, girth, _)| wide(*girth)).fold(0.0, f64::max);
    let count = f64::from(u32::try_from(points.len()).unwrap_or_default());
    let (probe, height) = Along::new(first.0, last.0, widest, 0.0);
    let crowd = ((count * GAP - height) / 2.0).max(0.0);
    let (along, _) = Along::new(first.0, last.0, widest, HEADROOM + crowd);
    let half = widest * probe.scale / 2.0;
    let middle = half + 4.0;
    let side = |sign: f64| {
        points
            .iter()
            .map(move |(at, girth, _)| (middle + sign * wide(*girth) * along.scale / 2.0, along.y(*at)))
    };
    let mut polygon: Vec<(f64, f64)> = side(-1.0).collect();
    polygon.extend(side(1.0).rev());
    let (top, bottom) = (along.y(last.0), along.y(first.0));
    let names = middle + half + 16.0;
    let mut shapes = vec![Shape::area(polygon, Ink::Light, 1.0)];
    let heights: Vec<f64> = points.iter().rev().map(|(at, ..)| along.y(*at)).collect();
    let placed = spread(&heights, GAP);
    for ((at, girth, mark), label) in points.iter().rev().zip(placed) {
        let y = along.y(*at);
        let edge = middle + wide(*girth) * along.scale / 2.0;
        shapes.push(Shape::line(vec![(2.0 * middle - edge, y), (edge, y)], 0.5));
        shapes.push(Shape::line(vec![(edge, y), (names - 8.0, label), (names - 2.0, label)], 0.3));
        shapes.push(Shape::label((names, label + LETTERS * 0.35), Anchor::Start, LETTERS, name(mark)));
    }
    let (far, near) = (if limb == "arm" { "hand" } else { "foot" }, "trunk");
    shapes.push(Shape::label((middle, top - 8.0), Anchor::Middle, LETTERS, near));
    shapes.push(Shape::label((middle, bottom + 14.0), Anchor::Middle, LETTERS, far));
    let height = (bottom - HEADROOM).max(0.0) + 2.0 * HEADROOM + crowd;
    Some(Outline { shapes, along, bottom, top, right: names + NAMES, height })
}

fn name(mark: &RecordMark) -> String {
    let girth = mark.girth_cm.as_ref().map(|one| one.text.as_str()).unwrap_or_default();
    match (mark.landmark, &mark.at_cm) {
        (Some(landmark), _) => format!("{} {girth} cm", spoken(landmark)),
        (None, Some(at)) => format!("at {} cm: {girth} cm", at.text),
        (None, None) => format!("{girth} cm"),
    }
}
