//! Owns the drawing: the limb's outline to scale and, beside it at the same heights, the estimated
//! pressure with its range and the claimed class. Table, terminal and paper say the same marks.

use super::axis::Across;
use super::bars::bars;
use super::outline::{LETTERS, Outline, outline};
use super::subject::Part;
use crate::document::{Anchor, Figure, Ink, Letters, Pen, Scene, Shape};
use crate::gradient::GradientBasis;
use crate::report::{MarkBlock, PressureBlock};
use crate::words;

/// Width of the drawing, points: within the margins of A4 and Letter.
const WIDTH: f64 = 512.0;
/// Width of the column of figures at the right, points.
const VALUES: f64 = 60.0;
/// Half the height of the hatched patch, points.
const PATCH: f64 = 8.0;
/// Half the side of a point, points.
const DOT: f64 = 2.4;

/// An estimate ready to draw.
struct Dot<'m> {
    mark: &'m MarkBlock,
    at: f64,
    mmhg: f64,
    low: f64,
    high: f64,
}

/// The drawing, the limb `tall` points high; none with fewer than two marks. No garment is drawn where none serves.
pub(super) fn plot(part: &Part<'_>, tall: f64) -> Option<Figure> {
    let mut drawn = outline(part.limb, tall)?;
    let mut shapes = std::mem::take(&mut drawn.shapes);
    let worn = part.pressure.filter(|_| !part.is_made());
    let dots: Vec<Option<Dot<'_>>> = worn.map(|one| one.marks.iter().map(dot).collect()).unwrap_or_default();
    let limb = &part.limb.printed;
    let mut description = format!(
        "Outline of the {limb}, to scale, from {} down to the trunk, with the girth at each mark.",
        part.limb.limb.extremity()
    );
    let mut title = format!("Outline of the {limb}");
    let mut width = drawn.right;
    let mut height = drawn.height;
    if let Some(pressure) = worn.filter(|_| dots.iter().flatten().count() > 1) {
        width = WIDTH;
        height += 12.0;
        title = format!("Pressure along the {limb}");
        shapes.extend(pressures(part, pressure, &dots, &drawn));
        let said: Vec<String> = dots
            .iter()
            .flatten()
            .map(|dot| format!("{} {}", words::noun(dot.mark.landmark), super::marks::pressure(dot.mark)))
            .collect();
        description = format!("{description} Pressure in mmHg with its range: {}.", said.join(", "));
        if let Some(claim) = claim(part, pressure) {
            description = format!("{description} {claim}");
        }
    }
    let scene = Scene { width, height, title, description, shapes };
    let claim = part.chart.and_then(|chart| chart.claim.as_ref());
    Some(Figure { scene, letters: worn.and_then(|one| bars(one, claim)).map(Letters::Bars) })
}

fn dot(mark: &MarkBlock) -> Option<Dot<'_>> {
    Some(Dot {
        mark,
        at: mark.at_cm.value,
        mmhg: mark.pressure_mmhg.as_ref()?.value,
        low: mark.low_mmhg.as_ref()?.value,
        high: mark.high_mmhg.as_ref()?.value,
    })
}

/// The ends of the class claimed, mmHg.
fn ends(part: &Part<'_>) -> [Option<f64>; 2] {
    part.chart.and_then(|chart| chart.claim.as_ref()).map_or([None, None], |claim| [claim.low, claim.high])
}

fn pressures(
    part: &Part<'_>,
    pressure: &PressureBlock,
    dots: &[Option<Dot<'_>>],
    drawn: &Outline,
) -> Vec<Shape> {
    let ends = ends(part);
    let highest =
        dots.iter().flatten().map(|dot| dot.high).chain(ends.iter().flatten().copied()).fold(0.0, f64::max);
    let across = Across::new(highest, drawn.right + 8.0, WIDTH - VALUES);
    let read = pressure.basis == Some(GradientBasis::Readings);
    let mut shapes = frame(
        across,
        drawn,
        if read { "pressure read by a sensor, mmHg" } else { "estimated pressure, mmHg" },
    );
    if let Some(at) = dots.iter().flatten().find(|dot| dot.mark.landmark == pressure.reference.landmark) {
        shapes.extend(patch(across, drawn.along.y(at.at), ends));
    }
    // The line breaks where a mark has no estimate.
    for run in dots.split(Option::is_none) {
        let points: Vec<(f64, f64)> =
            run.iter().flatten().map(|dot| (across.x(dot.mmhg), drawn.along.y(dot.at))).collect();
        if points.len() > 1 {
            shapes.push(Shape::line(points, 0.9));
        }
    }
    for dot in dots.iter().flatten() {
        let y = drawn.along.y(dot.at);
        let (low, x, high) = (across.x(dot.low), across.x(dot.mmhg), across.x(dot.high));
        shapes.push(Shape::line(vec![(low, y), (high, y)], 0.7));
        for end in [low, high] {
            shapes.push(Shape::line(vec![(end, y - 3.0), (end, y + 3.0)], 0.7));
        }
        let square = vec![(x - DOT, y - DOT), (x + DOT, y - DOT), (x + DOT, y + DOT), (x - DOT, y + DOT)];
        shapes.push(Shape::area(square, if dot.mark.judged { Ink::Black } else { Ink::White }, 0.9));
    }
    let heights: Vec<f64> = dots.iter().flatten().map(|dot| drawn.along.y(dot.at)).collect();
    for (dot, y) in dots.iter().flatten().zip(super::axis::spread(&heights, LETTERS + 1.5)) {
        let at = (WIDTH, y + LETTERS * 0.35);
        shapes.push(Shape::label(at, Anchor::End, LETTERS, super::marks::pressure(dot.mark)));
    }
    let mut key = "Filled: judged; open: shown only; bar: 95 % range.".to_owned();
    if let Some(claim) = claim(part, pressure) {
        key = format!("{key} {claim}");
    }
    shapes.push(Shape::label((WIDTH, drawn.height + 10.0), Anchor::End, LETTERS - 0.5, key));
    shapes
}

/// `Hatched: class 2 (23 to 32 mmHg) claimed, at the wrist.`
fn claim(part: &Part<'_>, pressure: &PressureBlock) -> Option<String> {
    let claim = part.chart?.claim.as_ref()?;
    Some(format!("Hatched: {} claimed, {}.", claim.printed, words::at(pressure.reference.landmark)))
}

fn frame(across: Across, drawn: &Outline, words: &str) -> Vec<Shape> {
    let (top, bottom) = (drawn.top - PATCH - 2.0, drawn.bottom + PATCH + 2.0);
    let right = across.x(f64::from(across.last));
    let mut shapes = Vec::new();
    let mut number = 0;
    while number <= across.last {
        let x = across.x(f64::from(number));
        if number > 0 {
            shapes.push(Shape::dashed(vec![(x, top), (x, bottom)], 0.3, 2.0));
        }
        let at = (x, bottom + LETTERS + 3.0);
        shapes.push(Shape::label(at, Anchor::Middle, LETTERS, number.to_string()));
        number += across.step;
    }
    let left = across.x(0.0);
    shapes.push(Shape::line(vec![(left, top), (left, bottom), (right, bottom)], 0.9));
    shapes.push(Shape::label((left, top - 3.0), Anchor::Start, LETTERS, words));
    shapes
}

/// The claimed class at the reference: a hatched patch, open where the class has no end.
fn patch(across: Across, y: f64, [low, high]: [Option<f64>; 2]) -> Vec<Shape> {
    if low.is_none() && high.is_none() {
        return Vec::new();
    }
    let left = across.x(low.unwrap_or(0.0));
    let right = across.x(high.unwrap_or(f64::from(across.last)));
    let (top, bottom) = (y - PATCH, y + PATCH);
    let corners = vec![(left, top), (right, top), (right, bottom), (left, bottom)];
    let mut shapes = vec![Shape::Path { points: corners, closed: true, fill: Ink::White, pen: None }];
    // Lines at 45 degrees, clipped to the patch by their own ends.
    let mut start = left - (bottom - top) + 4.0;
    while start < right {
        let from = (start.max(left), bottom - (start.max(left) - start));
        let to_x = (start + bottom - top).min(right);
        let to = (to_x, bottom - (to_x - start));
        shapes.push(Shape::line(vec![from, to], 0.35));
        start += 4.0;
    }
    let edge = |x: f64| Shape::Path {
        points: vec![(x, top), (x, bottom)],
        closed: false,
        fill: Ink::Clear,
        pen: Some(Pen { width: 0.7, dash: None }),
    };
    shapes.extend(low.map(|_| edge(left)));
    shapes.extend(high.map(|_| edge(right)));
    shapes
}
