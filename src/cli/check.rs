//! `tapeline check`: a record held against charts and what is worn.

use std::path::PathBuf;

use clap::Args;
use tapeline::report::build;

use super::exit::{Exit, Failure};
use super::options::{Day, Form, Place, Sets, Tables};
use super::session::{EVERYTHING, Session};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline check arm.yaml sleeve-chart.yaml
  tapeline check arm.yaml charts/*.yaml --today 2026-03-14
  tapeline check visit-1.yaml visit-2.yaml sleeve-chart.yaml   the newest is checked
  tapeline check arm.yaml sleeve-chart.yaml --format json -o arm.json";

/// `check`.
#[derive(Debug, Args)]
pub(crate) struct Check {
    /// Records, size charts, garments, wraps, in any order; `-` is standard input
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    #[command(flatten)]
    day: Day,
    #[command(flatten)]
    tables: Tables,
    #[command(flatten)]
    sets: Sets,
    #[command(flatten)]
    form: Form,
    #[command(flatten)]
    place: Place,
}

/// Runs the command.
pub(crate) fn run(args: &Check) -> Result<Exit, Failure> {
    let session =
        Session::open(&args.files, &args.day, &args.sets, Some(&args.tables), "check", &EVERYTHING)?;
    let report = build(&session.assess()?);
    args.place.write(&super::text_of(&report, args.form.format)?)?;
    Ok(Exit::of_outcome(report.decision.outcome))
}
