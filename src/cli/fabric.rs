//! `tapeline fabric`: a fabric's curve, or a bench test pooled into one.

use std::path::PathBuf;

use clap::Args;
use tapeline::document::Block;
use tapeline::garment::{fabric_file, open_fabric};
use tapeline::input::FileKind;
use tapeline::render::terminal;

use super::exit::{Exit, Failure};
use super::files::{Files, What};
use super::options::Place;
use super::{seen, stream, writer};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline fabric knit.yaml
  tapeline fabric bench.yaml --fabric-out knit.yaml

A bench test stands in a fabric file as
  bench: {kind: strip, width: 5 cm, relaxed: 20 cm, pulls: [{weight: 200 g, length: [23.1 cm, 23.3 cm]}]}
Hang the weights in rising order, stretch the piece to the end and back five times first, and read each length
while the weights come off. A strip hangs from one end (`strip`); a loop or tube over two bars (`loop`) carries
the pull on both sides.";

/// `fabric`.
#[derive(Debug, Args)]
pub(crate) struct Fabric {
    /// A fabric with a curve or a bench test; `-` is standard input
    #[arg(value_name = "FILE")]
    file: PathBuf,
    /// Write the curve as a plain fabric file
    #[arg(long, value_name = "FILE")]
    fabric_out: Option<PathBuf>,
    #[command(flatten)]
    place: Place,
}

/// Runs the command.
pub(crate) fn run(args: &Fabric) -> Result<Exit, Failure> {
    let kinds = [What::Kind(FileKind::Fabric)];
    let files = Files::read(std::slice::from_ref(&args.file), None, "fabric", &kinds)?;
    let mut blocks = Vec::new();
    for source in files.into_sources() {
        let fabric = open_fabric(source)?;
        if let Some(path) = &args.fabric_out {
            writer::write(fabric_file(&fabric).as_bytes(), path, args.place.force)?;
        }
        blocks.push(Block::lead(fabric.label.to_string()));
        blocks.extend(seen::fabric(&fabric));
    }
    args.place.write(&terminal(&blocks, stream::columns()))?;
    Ok(Exit::Fine)
}
