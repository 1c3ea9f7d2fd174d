//! `tapeline sheet`.

use std::path::{Path, PathBuf};

use anyhow::anyhow;
use tapeline::assessment::assess;
use tapeline::render::{self, Paper, sheet};
use tapeline::report::{Inputs, Record, build};

use super::exit::{Exit, Failure};
use super::inputs::{Setting, open};
use super::output;
use super::sheet_args::{PaperSize, Sheet, SheetFormat};

/// Runs the command.
#[expect(clippy::print_stderr, reason = "a file whose name was not given is named, beside the sheet")]
pub(crate) fn run(args: &Sheet) -> Result<Exit, Failure> {
    // Wrong endings are told before any file is read.
    let format = format(args)?;
    let setting = Setting::open(&args.rules)?;
    let (record, charts) = open(&args.record, &args.chart, &setting)?;
    let found = assess(&record, charts, setting.today, &setting.rules);
    let report = build(Inputs { open: &record, found: &found, rules: &setting.rules });
    let sheet = sheet::sheet(&report);
    let paper = match args.paper {
        PaperSize::A4 => Paper::A4,
        PaperSize::Letter => Paper::Letter,
    };
    let bytes = match format {
        SheetFormat::Html => render::html(&sheet, paper).into_bytes(),
        SheetFormat::Text => render::plain(&sheet, paper).into_bytes(),
        SheetFormat::Pdf => pdf(&sheet, paper)?,
    };
    let path = args.output.clone().unwrap_or_else(|| default_name(&report.record, format));
    output::write_to(&bytes, &path, args.force)?;
    if args.output.is_none() {
        eprintln!("the sheet is {}", path.display());
    }
    Ok(Exit::of_outcome(report.outcome))
}

#[cfg(feature = "pdf")]
fn pdf(sheet: &sheet::Sheet, paper: Paper) -> Result<Vec<u8>, Failure> {
    Ok(render::pdf(sheet, paper).map_err(|fault| anyhow!("the sheet cannot be written as PDF: {fault}"))?)
}

#[cfg(not(feature = "pdf"))]
fn pdf(_: &sheet::Sheet, _: Paper) -> Result<Vec<u8>, Failure> {
    Err(no_pdf().into())
}

/// What a build without the feature says.
fn no_pdf() -> anyhow::Error {
    anyhow!("this build has no PDF (the feature `pdf` was left out); write .html and print it, or .txt")
}

/// The form: as asked for, else by the file's ending, else PDF where there is one.
fn format(args: &Sheet) -> Result<SheetFormat, Failure> {
    let with_pdf = cfg!(feature = "pdf");
    let fallback = if with_pdf { SheetFormat::Pdf } else { SheetFormat::Html };
    let format = match (args.format, args.output.as_deref()) {
        (Some(format), _) => format,
        (None, None) => fallback,
        (None, Some(path)) => by_ending(path)?,
    };
    if format == SheetFormat::Pdf && !with_pdf {
        return Err(no_pdf().into());
    }
    Ok(format)
}

fn by_ending(path: &Path) -> anyhow::Result<SheetFormat> {
    if path.as_os_str() == "-" {
        return Err(anyhow!("for standard output say the form: `--format html`, `pdf` or `text`"));
    }
    match path.extension().and_then(|ending| ending.to_str()).map(str::to_ascii_lowercase).as_deref() {
        Some("html" | "htm") => Ok(SheetFormat::Html),
        Some("pdf") => Ok(SheetFormat::Pdf),
        Some("txt" | "text") => Ok(SheetFormat::Text),
        other => {
            let what =
                other.map_or_else(|| "no ending".to_owned(), |ending| format!("the ending `.{ending}`"));
            Err(anyhow!(
                "{}: a sheet has {what} here; `.html`, `.pdf` and `.txt` are known, or say `--format`",
                path.display()
            ))
        }
    }
}

/// `K-0417-left-arm-2026-03-14.pdf`: letters and figures of the reference stay, anything else is a dash.
fn default_name(record: &Record, format: SheetFormat) -> PathBuf {
    let ending = match format {
        SheetFormat::Html => "html",
        SheetFormat::Pdf => "pdf",
        SheetFormat::Text => "txt",
    };
    let dashed: String = record
        .client
        .chars()
        .map(|letter| if letter.is_alphanumeric() || letter == '_' { letter } else { '-' })
        .take(80)
        .collect();
    let client = dashed.trim_matches('-');
    let client = if client.is_empty() { "client" } else { client };
    PathBuf::from(format!("{client}-{}-{}-{}.{ending}", record.side, record.limb, record.measured))
}
