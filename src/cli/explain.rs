//! `tapeline explain`: what a word means.

use anyhow::anyhow;
use clap::Args;
use tapeline::explain::{Answer, all, index, lookup};
use tapeline::render::terminal;
use tapeline::words;

use super::exit::{Exit, Failure};
use super::options::{Place, Sets};
use super::{sets, stream};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline explain                 every word
  tapeline explain tourniquet      one word
  tapeline explain screening       the questions, by group
  tapeline explain --all -o words.txt";

/// `explain`.
#[derive(Debug, Args)]
pub(crate) struct Explain {
    /// A word of a report, a finding's id, a scheme, a number; without it, every one
    word: Vec<String>,
    /// Everything
    #[arg(long, conflicts_with = "word")]
    all: bool,
    #[command(flatten)]
    sets: Sets,
    #[command(flatten)]
    place: Place,
}

/// Runs the command.
pub(crate) fn run(args: &Explain) -> Result<Exit, Failure> {
    let (rules, schemes) = sets::open(&args.sets)?;
    let word = args.word.join(" ");
    let blocks = if args.all {
        all(&rules, &schemes)
    } else if word.trim().is_empty() {
        index(&rules, &schemes)
    } else {
        match lookup(&word, &rules, &schemes) {
            Answer::Found(blocks) => blocks,
            Answer::Near(near) => {
                let hint = if near.is_empty() {
                    "`tapeline explain` lists every word".to_owned()
                } else {
                    let near: Vec<String> = near.iter().map(|one| format!("`{one}`")).collect();
                    format!("did you mean {}?", words::list_or(&near))
                };
                return Err(
                    anyhow!("there is nothing to explain by the word `{}`; {hint}", word.trim()).into()
                );
            }
        }
    };
    args.place.write(&terminal(&blocks, stream::columns()))?;
    Ok(Exit::Fine)
}
