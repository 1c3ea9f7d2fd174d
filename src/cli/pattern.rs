//! `tapeline pattern`: relaxed girths of a made-to-measure garment.

use std::path::PathBuf;

use clap::Args;

use super::exit::{Exit, Failure};
use super::options::{Day, Form, Place, Sets};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline pattern leg.yaml knit.yaml --class 2 --scheme ral-gz-387-1
  tapeline pattern arm.yaml knit.yaml --pressure 27mmHg --fall-to 60%
  tapeline pattern arm.yaml knit.yaml --at wrist=27mmHg --at axilla=15mmHg --garment-out sleeve.yaml

The garment written with --garment-out is read by `tapeline gradient`. A made-to-measure order is made and
checked by a certified fitter.";

/// `pattern`.
#[derive(Debug, Args)]
#[command(group = clap::ArgGroup::new("wanted").args(["pressure", "class", "at"]))]
pub(crate) struct Pattern {
    /// A record and a fabric, in any order; `-` is standard input
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    /// The wanted pressure at the wrist or ankle, as 27mmHg; what was prescribed otherwise
    #[arg(long, value_name = "PRESSURE")]
    pressure: Option<String>,
    /// The wanted class
    #[arg(long, value_name = "CLASS")]
    class: Option<String>,
    /// The wanted pressure at a landmark, as wrist=27mmHg; may be given several times
    #[arg(long, value_name = "LANDMARK=PRESSURE")]
    at: Vec<String>,
    /// A straight fall to this share of the reference at the top, as 60%; the scheme's limits otherwise
    #[arg(long, value_name = "SHARE", conflicts_with = "at")]
    fall_to: Option<String>,
    /// The scheme of --class; that of the prescription otherwise
    #[arg(long, value_name = "ID")]
    scheme: Option<String>,
    /// Layers of the fabric
    #[arg(long, value_name = "COUNT", default_value_t = 1, value_parser = clap::value_parser!(u32).range(1..=10))]
    layers: u32,
    /// The garment's upper end, a landmark; the last measured one otherwise
    #[arg(long, value_name = "LANDMARK")]
    to: Option<String>,
    /// The garment's label
    #[arg(long, value_name = "TEXT", default_value = "made-to-measure pattern")]
    label: String,
    /// Write the garment to a file
    #[arg(long, value_name = "FILE")]
    garment_out: Option<PathBuf>,
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
pub(crate) fn run(args: &Pattern) -> Result<Exit, Failure> {
    let _ = args;
    Err(super::pending("pattern"))
}
