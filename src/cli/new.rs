//! `tapeline new`: a record, chart, garment or fabric, step by step or as a template.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::exit::{Exit, Failure};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline new record arm.yaml            measure and answer, step by step; stop and go on at any time
  tapeline new chart > sleeve-chart.yaml  a template to fill in
  tapeline new record --blank arm-form.pdf";

/// `new`.
#[derive(Debug, Args)]
pub(crate) struct New {
    /// What to write
    kind: Kind,
    /// The file; without it the template goes to standard output
    file: Option<PathBuf>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Kind {
    /// The record of a visit
    Record,
    /// A size chart
    Chart,
    /// A garment
    Garment,
    /// A fabric
    Fabric,
}

/// Runs the command.
pub(crate) fn run(_: &New) -> Result<Exit, Failure> {
    Err(anyhow::anyhow!("not yet").into())
}
