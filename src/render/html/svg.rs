//! Owns the drawing as inline SVG.

use std::fmt::Write as _;

use super::escape;
use crate::document::{Anchor, Ink, Pen, Scene, Shape};
use crate::words::trimmed;

/// A drawing as a file of its own.
pub fn svg_file(scene: &Scene) -> String {
    // Fonts of the page are not there: any plain one serves.
    let drawn = svg(scene, "drawing").replacen("<svg ", "<svg font-family=\"sans-serif\" ", 1);
    format!("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{drawn}\n")
}

/// The drawing with its title and description; `id` makes the names of both unique in the page.
pub(super) fn svg(scene: &Scene, id: &str) -> String {
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-labelledby=\"{id}-title {id}-words\" \
         width=\"{w}pt\" height=\"{h}pt\" viewBox=\"0 0 {w} {h}\">\n<title id=\"{id}-title\">{}</title>\n<desc id=\"{id}-words\">{}</desc>\n",
        escape::text(&scene.title),
        escape::text(&scene.description),
        w = number(scene.width),
        h = number(scene.height),
    );
    for shape in &scene.shapes {
        draw(&mut out, shape);
    }
    out.push_str("</svg>");
    out
}

fn draw(out: &mut String, shape: &Shape) {
    // Writing to a string cannot fail.
    match shape {
        Shape::Path { points, closed, fill, pen } => {
            let places: Vec<String> =
                points.iter().map(|(x, y)| format!("{} {}", number(*x), number(*y))).collect();
            let end = if *closed { "Z" } else { "" };
            let _ = writeln!(
                out,
                "<path d=\"M{}{end}\" fill=\"{}\"{}/>",
                places.join("L"),
                ink(*fill),
                stroke(*pen)
            );
        }
        Shape::Label { at, anchor, size, bold, text } => {
            let anchor = match anchor {
                Anchor::Start => "start",
                Anchor::Middle => "middle",
                Anchor::End => "end",
            };
            let weight = if *bold { " font-weight=\"bold\"" } else { "" };
            let _ = writeln!(
                out,
                "<text x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{anchor}\"{weight}>{}</text>",
                number(at.0),
                number(at.1),
                number(*size),
                escape::text(text)
            );
        }
    }
}

fn ink(fill: Ink) -> String {
    fill.grey().map_or_else(|| "none".to_owned(), |grey| format!("#{grey:02x}{grey:02x}{grey:02x}"))
}

fn stroke(pen: Option<Pen>) -> String {
    let Some(pen) = pen else { return String::new() };
    let dash = pen.dash.map(|dash| format!(" stroke-dasharray=\"{}\"", number(dash))).unwrap_or_default();
    format!(" stroke=\"#000000\" stroke-width=\"{}\"{dash}", number(pen.width))
}

/// A length to a hundredth of a point, without idle zeros.
fn number(value: f64) -> String {
    trimmed(value, 2).replace('\u{2212}', "-")
}
