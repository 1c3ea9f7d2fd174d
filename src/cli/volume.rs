//! `tapeline volume`: limb volume, the two sides, the change over visits.

use std::path::PathBuf;

use clap::Args;
use tapeline::report::build;

use super::exit::{Exit, Failure};
use super::options::{Day, Form, Place, Sets};
use super::session::{Session, VISITS};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline volume arm.yaml
  tapeline volume visit-1.yaml visit-2.yaml visit-3.yaml
  tapeline volume visits.yaml --format json";

/// `volume`.
#[derive(Debug, Args)]
pub(crate) struct Volume {
    /// Records of one client and limb, or a list of visits; `-` is standard input
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    #[command(flatten)]
    day: Day,
    #[command(flatten)]
    sets: Sets,
    #[command(flatten)]
    form: Form,
    #[command(flatten)]
    place: Place,
}

/// Runs the command.
pub(crate) fn run(args: &Volume) -> Result<Exit, Failure> {
    let session = Session::open(&args.files, &args.day, &args.sets, None, "volume", &VISITS)?;
    let report = build(&session.assess()?);
    args.place.write(&super::text_of(&report, args.form.format)?)?;
    Ok(Exit::Fine)
}
