//! Owns the limb's outline to scale, with the name and girth of each mark beside it. Hand or foot is
//! at the top and the trunk below, as the rows of the table run.

use super::axis::{Along, spread};
use crate::anatomy::Limb;
use crate::document::{Anchor, Ink, Shape};
use crate::report::{LimbBlock, MeasuredBlock};
use crate::words;

/// Height of the labels' letters, points.
pub(super) const LETTERS: f64 = 7.5;
/// From label to label, points.
const GAP: f64 = 9.6;
/// Above and below the limb, points.
pub(super) const HEADROOM: f64 = 22.0;

/// The limb drawn.
pub(super) struct Outline {
    /// Its shapes.
    pub(super) shapes: Vec<Shape>,
    /// Distance along it.
    pub(super) along: Along,
    /// The height of its distal end.
    pub(super) top: f64,
    /// The height of its proximal end.
    pub(super) bottom: f64,
    /// Where the names end.
    pub(super) right: f64,
    /// Height of all, with its labels.
    pub(super) height: f64,
}

/// Width of the column of names, points.
const NAMES: f64 = 112.0;

/// Draws the marks, distal to proximal, `tall` points high; none with fewer than two.
pub(super) fn outline(limb: &LimbBlock, tall: f64) -> Option<Outline> {
    let points: Vec<(f64, f64, &MeasuredBlock)> =
        limb.marks.iter().map(|mark| (mark.at_cm.value, mark.girth_cm.value, mark)).collect();
    let (first, last) = (points.first()?, points.last()?);
    if points.len() < 2 {
        return None;
    }
    // Seen from the front a round limb is as wide as its girth over pi (derived).
    let wide = |girth: f64| girth / std::f64::consts::PI;
    let widest = points.iter().map(|(_, girth, _)| wide(*girth)).fold(0.0, f64::max);
    let count = f64::from(u32::try_from(points.len()).unwrap_or_default());
    let (_, height) = Along::new((first.0, last.0), tall, widest, 0.0);
    let crowd = ((count * GAP - height) / 2.0).max(0.0);
    let (along, _) = Along::new((first.0, last.0), tall, widest, HEADROOM + crowd);
    let half = widest * along.scale / 2.0;
    let middle = half.max(34.0) + 4.0;
    let side = |sign: f64| {
        points
            .iter()
            .map(move |(at, girth, _)| (middle + sign * wide(*girth) * along.scale / 2.0, along.y(*at)))
    };
    let mut polygon: Vec<(f64, f64)> = side(-1.0).collect();
    polygon.extend(side(1.0).rev());
    let (top, bottom) = (along.y(first.0), along.y(last.0));
    let names = middle + half + 16.0;
    let mut shapes = vec![Shape::area(polygon, Ink::Light, 1.0)];
    let heights: Vec<f64> = points.iter().map(|(at, ..)| along.y(*at)).collect();
    let placed = spread(&heights, GAP);
    for ((at, girth, mark), label) in points.iter().zip(placed) {
        let y = along.y(*at);
        let edge = middle + wide(*girth) * along.scale / 2.0;
        shapes.push(Shape::line(vec![(2.0 * middle - edge, y), (edge, y)], 0.5));
        shapes.push(Shape::line(vec![(edge, y), (names - 8.0, label), (names - 2.0, label)], 0.3));
        shapes.push(Shape::label((names, label + LETTERS * 0.35), Anchor::Start, LETTERS, name(mark)));
    }
    let far = match limb.limb {
        Limb::Arm => "toward the hand",
        Limb::Leg => "toward the foot",
    };
    shapes.push(Shape::Label {
        at: (0.0, 6.0),
        anchor: Anchor::Start,
        size: LETTERS,
        bold: true,
        text: limb.printed.to_uppercase(),
    });
    shapes.push(Shape::label((0.0, top - 4.0), Anchor::Start, LETTERS - 0.5, far));
    shapes.push(Shape::label((0.0, bottom + 11.0), Anchor::Start, LETTERS - 0.5, "toward the trunk"));
    let height = (bottom - HEADROOM).max(0.0) + 2.0 * HEADROOM + crowd;
    Some(Outline { shapes, along, top, bottom, right: names + NAMES, height })
}

fn name(mark: &MeasuredBlock) -> String {
    let girth = &mark.girth_cm.text;
    match mark.landmark {
        Some(landmark) => format!("{} {girth} cm", words::noun(landmark)),
        None => format!("at {} cm: {girth} cm", mark.at_cm.text),
    }
}
