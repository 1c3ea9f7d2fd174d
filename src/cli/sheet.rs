//! `tapeline sheet`: the report of `check` as a printable fitting sheet.

use std::path::{Path, PathBuf};

use anyhow::anyhow;
use clap::{Args, ValueEnum};
use tapeline::render::{self, Paper};
use tapeline::report::{RecordBlock, build};

use super::exit::{Exit, Failure};
use super::options::{Day, Sets, Tables};
use super::session::{EVERYTHING, Session};
use super::writer;

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline sheet arm.yaml sleeve-chart.yaml -o arm.pdf
  tapeline sheet arm.yaml sleeve-chart.yaml -o arm.html --paper letter
  tapeline sheet visit-1.yaml visit-2.yaml sleeve-chart.yaml -o arm.txt";

/// `sheet`.
#[derive(Debug, Args)]
pub(crate) struct Sheet {
    /// Records, size charts, garments, wraps, in any order; `-` is standard input
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    /// The file (.html, .pdf or .txt); `-` is standard output. Without it the name is made of client,
    /// limb and date
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    /// Replace an existing file
    #[arg(long)]
    force: bool,
    /// The form; without it the ending of the file decides
    #[arg(long, value_enum)]
    format: Option<Shape>,
    /// The paper
    #[arg(long, value_enum, default_value_t = PaperSize::A4)]
    paper: PaperSize,
    /// The language of the client's pages
    #[arg(long, value_enum, default_value_t = Language::En)]
    language: Language,
    #[command(flatten)]
    day: Day,
    #[command(flatten)]
    tables: Tables,
    #[command(flatten)]
    sets: Sets,
}

/// Forms of a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Shape {
    /// One page for a browser, ready to print
    Html,
    /// A tagged PDF
    Pdf,
    /// For a line printer
    Text,
}

/// Paper of a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum PaperSize {
    /// 210 × 297 mm
    A4,
    /// 8.5 × 11 inches
    Letter,
}

/// Languages of the client's pages.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Language {
    /// English
    En,
    /// German
    De,
}

/// Runs the command.
pub(crate) fn run(args: &Sheet) -> Result<Exit, Failure> {
    // Wrong endings are told before any file is read.
    let shape = shape(args)?;
    let session =
        Session::open(&args.files, &args.day, &args.sets, Some(&args.tables), "sheet", &EVERYTHING)?;
    let report = build(&session.assess()?);
    let language = match args.language {
        Language::En => render::Language::English,
        Language::De => render::Language::German,
    };
    let sheet = render::sheet(&report, language);
    let paper = match args.paper {
        PaperSize::A4 => Paper::A4,
        PaperSize::Letter => Paper::Letter,
    };
    let bytes = match shape {
        Shape::Html => render::html(&sheet, paper).into_bytes(),
        Shape::Text => render::plain(&sheet, paper).into_bytes(),
        Shape::Pdf => pdf(&sheet, paper)?,
    };
    let path = args.output.clone().unwrap_or_else(|| default_name(&report.record, shape));
    writer::write(&bytes, &path, args.force)?;
    Ok(Exit::of_outcome(report.decision.outcome))
}

#[cfg(feature = "pdf")]
fn pdf(sheet: &tapeline::document::Sheet, paper: Paper) -> anyhow::Result<Vec<u8>> {
    render::pdf(sheet, paper).map_err(|fault| anyhow!("the sheet cannot be written as PDF: {fault}"))
}

#[cfg(not(feature = "pdf"))]
fn pdf(_: &tapeline::document::Sheet, _: Paper) -> anyhow::Result<Vec<u8>> {
    Err(no_pdf())
}

/// `L-0417-left-arm-2026-03-14.pdf`.
fn default_name(record: &RecordBlock, shape: Shape) -> PathBuf {
    let ending = match shape {
        Shape::Html => "html",
        Shape::Pdf => "pdf",
        Shape::Text => "txt",
    };
    let limb = record.limb.replace(' ', "-");
    PathBuf::from(format!("{}-{limb}-{}.{ending}", writer::safe_name(&record.client), record.measured_on))
}

/// What a build without the feature says.
fn no_pdf() -> anyhow::Error {
    anyhow!("this build has no PDF (the feature `pdf` was left out); write .html and print it, or .txt")
}

/// The form: as asked for, else by the file's ending, else PDF where there is one.
fn shape(args: &Sheet) -> anyhow::Result<Shape> {
    let with_pdf = cfg!(feature = "pdf");
    let fallback = if with_pdf { Shape::Pdf } else { Shape::Html };
    let shape = match (args.format, args.output.as_deref()) {
        (Some(shape), _) => shape,
        (None, None) => fallback,
        (None, Some(path)) => by_ending(path)?,
    };
    if shape == Shape::Pdf && !with_pdf { Err(no_pdf()) } else { Ok(shape) }
}

fn by_ending(path: &Path) -> anyhow::Result<Shape> {
    if path.as_os_str() == "-" {
        return Err(anyhow!("for standard output say the form: `--format html`, `pdf` or `text`"));
    }
    match path.extension().and_then(|ending| ending.to_str()).map(str::to_ascii_lowercase).as_deref() {
        Some("html" | "htm") => Ok(Shape::Html),
        Some("pdf") => Ok(Shape::Pdf),
        Some("txt" | "text") => Ok(Shape::Text),
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
