//! Owns the sheet as one self-contained HTML file: no script, nothing fetched.

use super::{
    blocks::Blocks,
    escape::{self, add},
    style,
};
use crate::document::{Leaf, Reader, Sheet};
use crate::render::Paper;

/// The sheet as HTML.
pub fn html(sheet: &Sheet, paper: Paper) -> String {
    let language = sheet.leaves.first().map_or("en", |leaf| leaf.language.as_str());
    let mut out = String::with_capacity(64 * 1024);
    add(
        &mut out,
        format_args!(
            "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n\
             <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
             <meta name=\"generator\" content=\"{}\">\n<title>{}</title>\n<style>{}</style>\n</head>\n<body>\n<main>\n",
            escape::text(language),
            escape::text(&sheet.made_by),
            escape::text(&sheet.title),
            style::style(sheet, paper),
        ),
    );
    for (place, leaf) in sheet.leaves.iter().enumerate() {
        section(&mut out, leaf, place);
    }
    out.push_str("</main>\n</body>\n</html>\n");
    out
}

fn section(out: &mut String, leaf: &Leaf, place: usize) {
    let class = match leaf.reader {
        Reader::Fitter => "leaf",
        Reader::Client => "leaf client",
    };
    let apart = if leaf.apart { " apart" } else { "" };
    let level = if place == 0 { 1 } else { 2 };
    let id = format!("leaf-{place}");
    add(
        out,
        format_args!(
            "<section class=\"{class}{apart} p{place}\" lang=\"{}\" aria-labelledby=\"{id}\">\n\
             <p class=\"run\"><strong>{}</strong> <span>{}</span></p>\n\
             <h{level} class=\"title\" id=\"{id}\">{}</h{level}>\n",
            escape::text(&leaf.language),
            escape::text(&leaf.head.bold),
            escape::text(&leaf.head.plain),
            escape::text(&leaf.title),
        ),
    );
    Blocks::new(&id).all(out, &leaf.blocks, level + 1);
    out.push_str("</section>\n");
}
