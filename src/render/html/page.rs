//! Owns the sheet as one self-contained HTML file: no script, nothing fetched.

use super::{
    blocks,
    escape::{self, add},
    style,
};
use crate::render::Paper;
use crate::render::sheet::{Leaf, Reader, Sheet};

/// The sheet as HTML.
pub fn html(sheet: &Sheet, paper: Paper) -> String {
    let mut out = String::from("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    add(
        &mut out,
        format_args!(
            "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <meta name=\"generator\" content=\"{}\">\n<title>{}</title>\n<style>{}</style>\n</head>\n<body>\n<main>\n",
            escape::text(&sheet.made_by),
            escape::text(&sheet.head.bold),
            style::style(&sheet.head, paper),
        ),
    );
    for (place, leaf) in sheet.leaves.iter().enumerate() {
        section(&mut out, sheet, leaf, place);
    }
    out.push_str("</main>\n</body>\n</html>\n");
    out
}

fn section(out: &mut String, sheet: &Sheet, leaf: &Leaf, place: usize) {
    let (class, level) = match leaf.reader {
        Reader::Fitter => ("leaf", 1),
        Reader::Client => ("leaf client", 2),
    };
    let id = format!("leaf-{place}");
    add(
        out,
        format_args!(
            "<section class=\"{class}\" aria-labelledby=\"{id}\">\n<p class=\"run\"><strong>{}</strong> <span>{}</span></p>\n\
         <h{level} class=\"title\" id=\"{id}\">{}</h{level}>\n",
            escape::text(&sheet.head.bold),
            escape::text(&sheet.head.plain),
            escape::text(&leaf.title),
        ),
    );
    blocks::all(out, &leaf.blocks, level + 1, &id);
    out.push_str("</section>\n");
}
