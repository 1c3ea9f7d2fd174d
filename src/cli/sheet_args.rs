//! Owns the flags of `sheet`.

use std::path::PathBuf;

use clap::{Args as ClapArgs, ValueEnum};

use super::args::RuleArgs;

/// `sheet`.
#[derive(Debug, ClapArgs)]
pub(crate) struct Sheet {
    /// The measurement record (YAML); `-` is standard input.
    pub(crate) record: PathBuf,
    /// A size chart (YAML); may be given several times. The sheet is about the best of them.
    #[arg(long, value_name = "FILE")]
    pub(crate) chart: Vec<PathBuf>,
    #[command(flatten)]
    pub(crate) rules: RuleArgs,
    /// The form; without it the ending of the file decides.
    #[arg(long, value_enum)]
    pub(crate) format: Option<SheetFormat>,
    /// The paper.
    #[arg(long, value_enum, default_value_t = PaperSize::A4)]
    pub(crate) paper: PaperSize,
    /// The file (.html, .pdf or .txt); `-` is standard output. Without it the name is made from client,
    /// side, limb and date.
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<PathBuf>,
    /// Replace an existing file.
    #[arg(long)]
    pub(crate) force: bool,
}

/// Forms of a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum SheetFormat {
    /// One self-contained page for a browser, ready to print.
    Html,
    /// A tagged PDF.
    Pdf,
    /// For a line printer.
    Text,
}

/// Paper of a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum PaperSize {
    /// 210 × 297 mm.
    A4,
    /// 8.5 × 11 inches.
    Letter,
}
