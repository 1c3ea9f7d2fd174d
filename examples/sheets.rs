//! A try.
#![allow(missing_docs, clippy::all)]
#[path = "../tests/sheet_reports.rs"]
mod sheet_reports;
use tapeline::render::{self, Language, Paper};
fn main() {
    for (name, report) in sheet_reports::all() {
        for (lang, language) in [("en", Language::English), ("de", Language::German)] {
            let sheet = render::sheet(&report, language);
            for (p, paper) in [("a4", Paper::A4), ("letter", Paper::Letter)] {
                let n = format!("/tmp/p/{name}-{lang}-{p}");
                std::fs::write(
                    format!("{n}.pdf"),
                    render::pdf(&sheet, paper).unwrap_or_else(|e| panic!("{name}: {e}")),
                )
                .unwrap();
                std::fs::write(format!("{n}.html"), render::html(&sheet, paper)).unwrap();
                std::fs::write(format!("{n}.txt"), render::plain(&sheet, paper)).unwrap();
            }
        }
    }
}
