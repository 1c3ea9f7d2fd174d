//! Owns the empty form of a record: to be filled in at the couch with a pencil, in the order of the guided
//! entry.

use std::path::Path;

use anyhow::anyhow;
use jiff::civil::Date;
use tapeline::document::Sheet;
use tapeline::render::{self, Paper};
use tapeline::rules::Rules;

/// The form as bytes, by the ending of its file.
pub(super) fn form(rules: &Rules, today: Date, path: &Path) -> anyhow::Result<Vec<u8>> {
    let sheet = render::blank_form(rules, &today.to_string());
    let ending = path.extension().and_then(|ending| ending.to_str()).unwrap_or_default().to_ascii_lowercase();
    match ending.as_str() {
        "html" | "htm" => Ok(render::html(&sheet, Paper::A4).into_bytes()),
        "txt" | "text" => Ok(render::plain(&sheet, Paper::A4).into_bytes()),
        // Standard output takes the form for a line printer.
        _ if path.as_os_str() == "-" => Ok(render::plain(&sheet, Paper::A4).into_bytes()),
        "pdf" => pdf(&sheet),
        _ => Err(anyhow!("{}: a form is `.pdf`, `.html` or `.txt`", path.display())),
    }
}

#[cfg(feature = "pdf")]
fn pdf(sheet: &Sheet) -> anyhow::Result<Vec<u8>> {
    render::pdf(sheet, Paper::A4).map_err(|fault| anyhow!("the form cannot be written as PDF: {fault}"))
}

#[cfg(not(feature = "pdf"))]
fn pdf(_: &Sheet) -> anyhow::Result<Vec<u8>> {
    Err(anyhow!("this build has no PDF (the feature `pdf` was left out); write .html and print it"))
}
