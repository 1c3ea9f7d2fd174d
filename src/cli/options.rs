//! Owns the options that several commands share.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use jiff::civil::Date;

/// The day of the check.
#[derive(Debug, Args)]
pub(crate) struct Day {
    /// The day of the check, as 2026-03-14; the system's date otherwise. It is printed
    #[arg(long, value_name = "DATE", value_parser = date)]
    pub(crate) today: Option<Date>,
}

/// Where rules and schemes come from.
#[derive(Debug, Args)]
pub(crate) struct Sets {
    /// A rules file in place of the default set, or a shipped set by name: default, awmf-037-005
    #[arg(long, value_name = "NAME|FILE")]
    pub(crate) rules: Option<PathBuf>,
    /// A pressure scheme file beside the shipped ones; may be given several times
    #[arg(long, value_name = "FILE")]
    pub(crate) scheme_file: Vec<PathBuf>,
}

/// Where the output goes.
#[derive(Debug, Args)]
pub(crate) struct Place {
    /// Write to a file in place of standard output; `-` is standard output
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<PathBuf>,
    /// Replace an existing file
    #[arg(long)]
    pub(crate) force: bool,
}

/// In which form.
#[derive(Debug, Args)]
pub(crate) struct Form {
    /// The form of the report
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(crate) format: Format,
}

/// How tables are read.
#[derive(Debug, Args)]
pub(crate) struct Tables {
    /// Read decimal commas in tables (16,5 as 16.5)
    #[arg(long)]
    pub(crate) decimal_comma: bool,
}

/// Forms of a report.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Format {
    /// For reading in a terminal
    Text,
    /// `tapeline.report/1`, for other programs
    Json,
}

fn date(text: &str) -> Result<Date, String> {
    let shaped = text.len() == 10 && text.bytes().filter(|byte| *byte == b'-').count() == 2;
    if !shaped {
        return Err("write year-month-day, as 2026-03-14".to_owned());
    }
    text.parse().map_err(|_| "no such day; write year-month-day, as 2026-03-14".to_owned())
}

impl Place {
    /// Writes a text where the options say.
    pub(crate) fn write(&self, text: &str) -> anyhow::Result<()> {
        match &self.output {
            Some(path) => super::writer::write(text.as_bytes(), path, self.force),
            None => super::stream::write(text.as_bytes()),
        }
    }
}
