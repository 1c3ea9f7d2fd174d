//! `tapeline gradient`: one garment in depth.

use std::path::PathBuf;

use clap::Args;

use super::exit::{Exit, Failure};
use super::options::{Day, Form, Place, Sets, Tables};
use super::session::{EVERYTHING, Session};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline gradient leg.yaml stocking.yaml
  tapeline gradient arm.yaml sleeve-chart.yaml --size 3
  tapeline gradient arm.yaml --readings

A garment needs relaxed girths, or flat widths (laid flat, half the girth), at the measured marks. With a
fabric curve the figures are in mmHg; without one the fall is judged from stretch alone.";

/// `gradient`.
#[derive(Debug, Args)]
pub(crate) struct Gradient {
    /// A record, and a garment, a wrap or a size chart, in any order; `-` is standard input
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    /// The size of the chart
    #[arg(long, value_name = "LABEL")]
    size: Option<String>,
    /// Judge by the record's sensor readings alone
    #[arg(long, conflicts_with = "size")]
    readings: bool,
    /// With --readings: of which garment, as the record names it
    #[arg(long, value_name = "LABEL", requires = "readings")]
    of: Option<String>,
    /// Write the fabric's curve, scaled to fit the readings, to a fabric file
    #[arg(long, value_name = "FILE", conflicts_with = "readings")]
    fabric_out: Option<PathBuf>,
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
pub(crate) fn run(args: &Gradient) -> Result<Exit, Failure> {
    let session =
        Session::open(&args.files, &args.day, &args.sets, Some(&args.tables), "gradient", &EVERYTHING)?;
    let _ = (&args.form, &args.place, &session, &args.size, args.readings, &args.of, &args.fabric_out);
    Err(super::pending("gradient"))
}
