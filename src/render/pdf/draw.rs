//! Owns the drawing of one mark through the writer.

use krilla::color::luma;
use krilla::geom::{Path, PathBuilder, Point};
use krilla::num::NormalizedF32;
use krilla::paint::{Fill, FillRule, Stroke, StrokeDash};
use krilla::surface::{Location, Surface};

use super::display::{Op, Pen};
use super::fonts::Fonts;

/// Draws one operation.
pub(super) fn draw(surface: &mut Surface<'_>, fonts: &Fonts, op: &Op, location: Option<Location>) {
    match op {
        Op::Text { at, weight, size, grey, text } => {
            let face = fonts.face(*weight);
            let glyphs = face.glyphs(text, location);
            surface.set_stroke(None);
            surface.set_fill(Some(fill(*grey)));
            let start = Point::from_xy(at.0, at.1);
            surface.draw_glyphs(start, &glyphs, face.font.clone(), text, *size, false);
        }
        Op::Path { points, closed, fill: grey, pen } => {
            let Some(shape) = path(points, *closed) else { return };
            // Fill and line both absent would be filled black by the writer.
            if grey.is_none() && pen.is_none() {
                return;
            }
            surface.set_fill(grey.map(fill));
            surface.set_stroke(pen.map(stroke));
            surface.draw_path(&shape);
        }
    }
}

fn path(points: &[(f32, f32)], closed: bool) -> Option<Path> {
    let (first, rest) = points.split_first()?;
    let mut builder = PathBuilder::new();
    builder.move_to(first.0, first.1);
    for point in rest {
        builder.line_to(point.0, point.1);
    }
    if closed {
        builder.close();
    }
    builder.finish()
}

fn fill(grey: u8) -> Fill {
    Fill { paint: luma::Color::new(grey).into(), opacity: NormalizedF32::ONE, rule: FillRule::NonZero }
}

fn stroke(pen: Pen) -> Stroke {
    Stroke {
        paint: luma::Color::new(0).into(),
        width: pen.width,
        dash: pen.dash.map(|dash| StrokeDash { array: vec![dash, dash], offset: 0.0 }),
        ..Stroke::default()
    }
}
