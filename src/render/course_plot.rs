//! Owns the drawing of a limb's course: its volume and the other limb's over the days of the visits,
//! with what measuring alone may give as a band; in letters, bars of the same figures.

use crate::document::{Anchor, Bar, Bars, Figure, Ink, Letters, Pen, Reach, Scene, Shape};
use crate::report::{CourseBlock, Figure as Printed, VisitBlock};
use crate::words;

/// Width of the drawing, points: within the margins of A4 and Letter.
const WIDTH: f64 = 512.0;
/// Height of the drawing, points.
const HEIGHT: f64 = 190.0;
/// Where the frame begins and ends, points.
const LEFT: f64 = 44.0;
const RIGHT: f64 = 500.0;
const TOP: f64 = 22.0;
const BOTTOM: f64 = 150.0;
/// Height of letters, points.
const LETTERS: f64 = 7.5;
/// Half the side of a point, points.
const DOT: f64 = 2.4;
/// Least room between two dates, points.
const DATE_ROOM: f64 = 48.0;

fn date_words(visit: &VisitBlock) -> String {
    visit.measured_on.clone()
}

fn figure_words(figure: Option<&Printed>) -> String {
    figure.map(|one| one.text.clone()).unwrap_or_default()
}

/// Where days and volumes stand.
#[derive(Clone, Copy)]
struct Scale {
    days: f64,
    low: f64,
    high: f64,
}

impl Scale {
    fn x(self, visit: &VisitBlock) -> f64 {
        LEFT + 14.0 + f64::from(visit.day) / self.days * (RIGHT - LEFT - 28.0)
    }

    fn y(self, ml: f64) -> f64 {
        BOTTOM - (ml - self.low) / (self.high - self.low) * (BOTTOM - TOP)
    }
}

/// The drawing of the limb at `place` of the report, `printed` as `left arm`; none with fewer than two
/// visits that have a volume.
pub(in crate::render) fn course_plot(course: &CourseBlock, place: usize, printed: &str) -> Option<Figure> {
    let visits: Vec<&VisitBlock> =
        course.visits.iter().filter(|one| one.limb == place && one.compared_ml.is_some()).collect();
    if visits.len() < 2 {
        return None;
    }
    let scale = scale(&visits);
    let mut shapes = bands(&visits, scale);
    shapes.extend(frame(&visits, scale));
    let own = |one: &VisitBlock| one.compared_ml.as_ref().map(|figure| figure.value);
    let other = |one: &VisitBlock| one.compared_other_ml.as_ref().map(|figure| figure.value);
    shapes.extend(curve(&visits, scale, Ink::White, Some(3.0), &other));
    shapes.extend(curve(&visits, scale, Ink::Black, None, &own));
    let key = if visits.iter().any(|one| one.compared_other_ml.is_some()) {
        format!(
            "Filled: {printed}; open: the other side; grey: an unchanged limb stays within. The scale does not begin at 0."
        )
    } else {
        format!("Filled: {printed}; grey: an unchanged limb stays within. The scale does not begin at 0.")
    };
    shapes.push(Shape::label((RIGHT, HEIGHT - 6.0), Anchor::End, LETTERS - 0.5, key));
    let title = format!("Course of the {printed}");
    let scene = Scene { width: WIDTH, height: HEIGHT, title, description: said(&visits, printed), shapes };
    Some(Figure { scene, letters: Some(Letters::Bars(bars(&visits, printed))) })
}

fn scale(visits: &[&VisitBlock]) -> Scale {
    let figures = visits.iter().flat_map(|one| {
        [&one.compared_ml, &one.compared_other_ml, &one.unchanged_low_ml, &one.unchanged_high_ml]
            .into_iter()
            .flatten()
    });
    let (low, high) = figures.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), figure| {
        (low.min(figure.value), high.max(figure.value))
    });
    let room = ((high - low) * 0.05).max(1.0);
    let days = f64::from(visits.last().map_or(1, |one| one.day)).max(1.0);
    Scale { days, low: low - room, high: high + room }
}

/// Runs of visits of one series, in order.
fn runs<'v>(visits: &[&'v VisitBlock]) -> Vec<Vec<&'v VisitBlock>> {
    let mut all: Vec<Vec<&VisitBlock>> = Vec::new();
    for visit in visits {
        match all.last_mut() {
            Some(run) if run.last().is_some_and(|last| last.series == visit.series) => run.push(visit),
            _ => all.push(vec![visit]),
        }
    }
    all
}

/// What measuring alone may give around the first visit of each series.
fn bands(visits: &[&VisitBlock], scale: Scale) -> Vec<Shape> {
    let mut shapes = Vec::new();
    for run in runs(visits) {
        let (Some(first), Some(last)) = (run.first(), run.last()) else { continue };
        let (Some(low), Some(high)) = (&first.unchanged_low_ml, &first.unchanged_high_ml) else { continue };
        let (left, right) = (scale.x(first) - DOT, scale.x(last) + DOT);
        let (top, bottom) = (scale.y(high.value), scale.y(low.value));
        shapes.push(Shape::Path {
            points: vec![(left, top), (right, top), (right, bottom), (left, bottom)],
            closed: true,
            fill: Ink::Light,
            pen: None,
        });
    }
    shapes
}

fn frame(visits: &[&VisitBlock], scale: Scale) -> Vec<Shape> {
    let mut shapes = vec![Shape::line(vec![(LEFT, TOP), (LEFT, BOTTOM), (RIGHT, BOTTOM)], 0.9)];
    let step = step(scale.high - scale.low);
    let mut tick = (scale.low / step).ceil() * step;
    while tick <= scale.high {
        let y = scale.y(tick);
        shapes.push(Shape::dashed(vec![(LEFT, y), (RIGHT, y)], 0.3, 2.0));
        let at = (LEFT - 4.0, y + LETTERS * 0.35);
        shapes.push(Shape::label(at, Anchor::End, LETTERS, words::whole(tick)));
        tick += step;
    }
    shapes.push(Shape::label((LEFT - 4.0, TOP - 9.0), Anchor::End, LETTERS, "mL"));
    // The newest visit is always dated; the others where there is room before it.
    let newest = visits.last().map_or(RIGHT, |visit| scale.x(visit));
    let mut free = f64::NEG_INFINITY;
    for (number, visit) in visits.iter().enumerate() {
        let x = scale.x(visit);
        shapes.push(Shape::line(vec![(x, BOTTOM), (x, BOTTOM + 3.0)], 0.7));
        let is_newest = number + 1 == visits.len();
        if is_newest || (x >= free && x + DATE_ROOM <= newest) {
            let at = (x, BOTTOM + 4.0 + LETTERS);
            shapes.push(Shape::label(at, Anchor::Middle, LETTERS, date_words(visit)));
            free = x + DATE_ROOM;
        }
    }
    // Where a series begins anew, volumes before and after are not compared.
    for run in runs(visits).iter().skip(1) {
        let Some(first) = run.first() else { continue };
        let x = scale.x(first) - DOT - 3.0;
        shapes.push(Shape::dashed(vec![(x, TOP), (x, BOTTOM)], 0.7, 4.0));
        shapes.push(Shape::label((x + 2.0, TOP - 2.0), Anchor::Start, LETTERS - 0.5, "new baseline"));
    }
    shapes
}

/// A step of 1, 2 or 5 and zeros that cuts `span` into about five.
fn step(span: f64) -> f64 {
    let rough = (span / 5.0).max(1e-9);
    let power = 10_f64.powf(rough.log10().floor());
    [1.0, 2.0, 5.0, 10.0].into_iter().map(|one| one * power).find(|one| *one >= rough).unwrap_or(power)
}

fn curve(
    visits: &[&VisitBlock],
    scale: Scale,
    fill: Ink,
    dash: Option<f64>,
    of: &dyn Fn(&VisitBlock) -> Option<f64>,
) -> Vec<Shape> {
    let mut lines = Vec::new();
    let mut dots = Vec::new();
    for run in runs(visits) {
        let points: Vec<(f64, f64)> =
            run.iter().filter_map(|one| Some((scale.x(one), scale.y(of(one)?)))).collect();
        for (x, y) in &points {
            let square = vec![(x - DOT, y - DOT), (x + DOT, y - DOT), (x + DOT, y + DOT), (x - DOT, y + DOT)];
            dots.push(Shape::area(square, fill, 0.9));
        }
        if points.len() > 1 {
            let pen = Some(Pen { width: 0.9, dash });
            lines.push(Shape::Path { points, closed: false, fill: Ink::Clear, pen });
        }
    }
    lines.extend(dots);
    lines
}

/// The same in sentences.
fn said(visits: &[&VisitBlock], printed: &str) -> String {
    let each: Vec<String> = visits
        .iter()
        .map(|one| {
            let other = one
                .compared_other_ml
                .as_ref()
                .map(|figure| format!(", other side {} mL", figure.text))
                .unwrap_or_default();
            format!("{} {} mL{other}", date_words(one), figure_words(one.compared_ml.as_ref()))
        })
        .collect();
    format!("Volume of the {printed} over the visits: {}.", each.join("; "))
}

/// The excess where every visit has one, else the volume.
fn bars(visits: &[&VisitBlock], limb: &str) -> Bars {
    let by_excess = visits.iter().all(|one| one.compared_excess_ml.is_some());
    let rows: Vec<Bar> = visits
        .iter()
        .map(|one| {
            let figure = if by_excess { one.compared_excess_ml.as_ref() } else { one.compared_ml.as_ref() };
            let reach = one
                .unchanged_high_ml
                .as_ref()
                .zip(one.compared_ml.as_ref())
                .map(|(high, own)| high.value - own.value);
            let percent = one.compared_excess_percent.as_ref().filter(|_| by_excess);
            Bar {
                label: date_words(one),
                reach: figure.zip(reach).map(|(figure, reach)| Reach {
                    low: (figure.value - reach).max(0.0),
                    at: figure.value.max(0.0),
                    high: (figure.value + reach).max(0.0),
                }),
                band: None,
                words: format!(
                    "{} mL{}",
                    figure_words(figure),
                    percent.map(|one| format!(", {} %", one.text)).unwrap_or_default()
                ),
            }
        })
        .collect();
    let scale = Bars::scale_for(rows.iter().filter_map(|row| row.reach).map(|reach| reach.high));
    let what = if by_excess { "the excess" } else { "the volume" };
    let key =
        format!("Each bar is {what} of the {limb} with what measuring alone may give between two visits.");
    Bars { scale, rows, key }
}
