//! Owns the drawing: the limb's outline to scale and, beside it at the same heights, the estimated
//! pressure with its range and the claimed class.

use super::axis::Across;
use super::fall::spoken;
use super::outline::{LETTERS, Outline, outline};
use super::subject::Subject;
use super::{Anchor, Ink, Pen, Scene, Shape};
use crate::report::{Mark, Pressure};

/// Width of the drawing, points: within the margins of A4 and Letter.
const WIDTH: f64 = 500.0;
/// Width of the column of figures at the right, points.
const VALUES: f64 = 58.0;
/// Half the height of the hatched patch, points.
const PATCH: f64 = 10.0;
/// Half the side of a point, points.
const DOT: f64 = 2.6;

/// An estimate ready to draw.
struct Dot<'m> {
    mark: &'m Mark,
    at: f64,
    mmhg: f64,
    low: f64,
    high: f64,
}

/// The drawing; none with fewer than two marks.
pub(super) fn plot(subject: Subject<'_>) -> Option<Scene> {
    let record = &subject.report.record;
    let mut drawn = outline(&record.marks, record.limb)?;
    let mut shapes = std::mem::take(&mut drawn.shapes);
    let dots: Vec<Option<Dot<'_>>> =
        subject.pressure.map(|one| one.marks.iter().map(dot).collect()).unwrap_or_default();
    let limb = subject.limb();
    let mut description = format!("Outline of the {limb}, to scale, with the girth at each mark.");
    let mut title = format!("Outline of the {limb}");
    let mut width = drawn.right;
    if let Some(pressure) = subject.pressure.filter(|_| dots.iter().flatten().count() > 1) {
        width = WIDTH;
        title = format!("Pressure along the {limb}");
        shapes.extend(pressures(subject, pressure, &dots, &drawn));
        let said: Vec<String> = dots
            .iter()
            .flatten()
            .map(|dot| format!("{} {}", spoken(dot.mark.landmark), dot.mark.words))
            .collect();
        description = format!("{description} Pressure in mmHg with its range: {}.", said.join(", "));
        if let Some(claim) = claim(pressure) {
            description = format!("{description} {claim}");
        }
    }
    Some(Scene { width, height: drawn.height + 34.0, title, description, shapes })
}

fn dot(mark: &Mark) -> Option<Dot<'_>> {
    Some(Dot {
        mark,
        at: mark.at_cm.as_ref()?.value,
        mmhg: mark.pressure_mmhg.as_ref()?.value,
        low: mark.low_mmhg.as_ref()?.value,
        high: mark.high_mmhg.as_ref()?.value,
    })
}

fn pressures(
    subject: Subject<'_>,
    pressure: &Pressure,
    dots: &[Option<Dot<'_>>],
    drawn: &Outline,
) -> Vec<Shape> {
    let reference = &pressure.reference;
    let ends = [reference.claimed_low_mmhg.as_ref(), reference.claimed_high_mmhg.as_ref()];
    let claimed = ends.iter().flatten().map(|one| one.value);
    let highest = dots.iter().flatten().map(|dot| dot.high).chain(claimed).fold(0.0, f64::max);
    let across = Across::new(highest, drawn.right + 8.0, WIDTH - VALUES);
    let read = pressure.basis == Some("readings");
    let mut shapes = frame(
        across,
        drawn,
        if read { "pressure read by a sensor, mmHg" } else { "estimated pressure, mmHg" },
    );
    if let Some(at) = dots.iter().flatten().find(|dot| dot.mark.landmark == reference.landmark) {
        shapes.extend(patch(across, drawn.along.y(at.at), ends.map(|end| end.map(|one| one.value))));
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
        let judged = subject.graduation.is_some_and(|graduation| {
            graduation
                .pairs
                .iter()
                .any(|pair| pair.distal == dot.mark.landmark || pair.proximal == dot.mark.landmark)
        });
        let square = vec![(x - DOT, y - DOT), (x + DOT, y - DOT), (x + DOT, y + DOT), (x - DOT, y + DOT)];
        shapes.push(Shape::area(square, if judged { Ink::Black } else { Ink::White }, 0.9));
        let at = (WIDTH, y + LETTERS * 0.35);
        shapes.push(Shape::label(at, Anchor::End, LETTERS, dot.mark.words.clone()));
    }
    let mut words = "filled: judged; open: shown only; bar: 95 % range".to_owned();
    if let Some(claim) = claim(pressure) {
        words = format!("{words}. {claim}");
    }
    shapes.push(Shape::label((WIDTH, drawn.height + 30.0), Anchor::End, LETTERS - 0.5, words));
    shapes
}

/// `Hatched: class 2 claimed, 23 to 32 mmHg, at the wrist.`
fn claim(pressure: &Pressure) -> Option<String> {
    let reference = &pressure.reference;
    let class = reference.claimed_class.as_ref()?;
    let band = match (&reference.claimed_low_mmhg, &reference.claimed_high_mmhg) {
        (Some(low), Some(high)) => format!("{} to {} mmHg", low.text, high.text),
        (Some(low), None) => format!("{} mmHg and more", low.text),
        (None, Some(high)) => format!("up to {} mmHg", high.text),
        (None, None) => return None,
    };
    Some(format!("Hatched: class {class} claimed, {band} at the {}.", spoken(reference.landmark)))
}

fn frame(across: Across, drawn: &Outline, words: &str) -> Vec<Shape> {
    let (top, bottom) = (drawn.top - PATCH - 4.0, drawn.bottom + PATCH + 4.0);
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
    let middle = f64::midpoint(left, right);
    let at = (middle, bottom + 2.0 * LETTERS + 7.0);
    shapes.push(Shape::label(at, Anchor::Middle, LETTERS, words));
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
