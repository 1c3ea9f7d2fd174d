//! Owns the flags and their help.

use std::path::PathBuf;

use clap::{Args as ClapArgs, Parser, Subcommand, ValueEnum};
use jiff::civil::Date;

use super::sheet_args::Sheet;

/// Checks limb girths against garment size charts, estimates the interface pressure along the limb
/// and prints what has to be looked at before a fitting. It estimates; a certified fitter decides.
#[derive(Debug, Parser)]
#[command(name = "tapeline", version, arg_required_else_help = true)]
#[command(
    after_help = "Exit status: 0 try-on, or nothing to report · 1 any other outcome, or faults found · 2 no report (usage, input or output problem) · 3 stop"
)]
pub(crate) struct Args {
    /// What to do.
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Check a record: screening, sizing against each chart, pressure and its fall, volume.
    Check(Check),
    /// Print a fitting sheet: a leaf for the fitter and the file, a leaf for the client.
    Sheet(Sheet),
    /// What a finding, question, scheme, number or outcome means, its rule, its basis, what to do next.
    Explain(Explain),
}

/// `check`.
#[derive(Debug, ClapArgs)]
pub(crate) struct Check {
    /// The measurement record (YAML); `-` is standard input.
    pub(crate) record: PathBuf,
    /// A size chart (YAML); may be given several times.
    #[arg(long, value_name = "FILE")]
    pub(crate) chart: Vec<PathBuf>,
    /// An earlier record of the same limb (YAML), for changes of girth and weight; may be given several times.
    #[arg(long, value_name = "RECORD")]
    pub(crate) previous: Vec<PathBuf>,
    #[command(flatten)]
    pub(crate) rules: RuleArgs,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

/// `explain`.
#[derive(Debug, ClapArgs)]
pub(crate) struct Explain {
    /// The id as the report prints it, or: screening, hazards, alarms. Without it, every id.
    pub(crate) id: Option<String>,
    /// Everything, as Markdown.
    #[arg(long, conflicts_with = "id")]
    pub(crate) all: bool,
    /// A thresholds file in place of the default set, or a shipped set by name: consensus, s2k.
    #[arg(long, value_name = "FILE|NAME")]
    pub(crate) thresholds: Option<PathBuf>,
    /// A pressure scheme file, beside the shipped ones; may be given several times.
    #[arg(long, value_name = "FILE")]
    pub(crate) schemes: Vec<PathBuf>,
    /// Write to a file instead of standard output; `-` is standard output.
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<PathBuf>,
    /// Replace an existing file.
    #[arg(long)]
    pub(crate) force: bool,
}

/// Where rules, schemes and the date come from.
#[derive(Debug, ClapArgs)]
pub(crate) struct RuleArgs {
    /// The day of the check, as 2026-03-14; the system date otherwise. It is printed.
    #[arg(long, value_name = "DATE", value_parser = date)]
    pub(crate) today: Option<Date>,
    /// A thresholds file in place of the default set, or a shipped set by name: consensus, s2k.
    #[arg(long, value_name = "FILE|NAME")]
    pub(crate) thresholds: Option<PathBuf>,
    /// A pressure scheme file, beside the shipped ones; may be given several times.
    #[arg(long, value_name = "FILE")]
    pub(crate) schemes: Vec<PathBuf>,
}

/// Where the report goes and in which form.
#[derive(Debug, ClapArgs)]
pub(crate) struct OutputArgs {
    /// The form of the report.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(crate) format: Format,
    /// Write the report to a file instead of standard output; `-` is standard output.
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<PathBuf>,
    /// Replace an existing file.
    #[arg(long)]
    pub(crate) force: bool,
}

/// Forms of a report.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Format {
    /// For reading in a terminal.
    Text,
    /// `tapeline.report/1`, for other programs.
    Json,
}

fn date(text: &str) -> Result<Date, String> {
    let shaped = text.len() == 10 && text.bytes().filter(|byte| *byte == b'-').count() == 2;
    if !shaped {
        return Err("write year-month-day, as 2026-03-14".to_owned());
    }
    text.parse().map_err(|_| "no such day; write year-month-day, as 2026-03-14".to_owned())
}
