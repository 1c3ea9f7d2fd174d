//! `tapeline explain`: what a word means.

use clap::Args;

use super::exit::{Exit, Failure};
use super::options::{Place, Sets};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline explain                 every word
  tapeline explain tourniquet      one word
  tapeline explain screening       the questions, by group
  tapeline explain --all -o words.md";

/// `explain`.
#[derive(Debug, Args)]
pub(crate) struct Explain {
    /// A word of a report, a finding's id, a scheme, a number; without it, every one
    word: Option<String>,
    /// Everything, as Markdown
    #[arg(long, conflicts_with = "word")]
    all: bool,
    #[command(flatten)]
    sets: Sets,
    #[command(flatten)]
    place: Place,
}

/// Runs the command.
pub(crate) fn run(args: &Explain) -> Result<Exit, Failure> {
    let _ = (&args.word, args.all, &args.sets, &args.place);
    Err(super::pending("explain"))
}
