//! `tapeline fabric`: a fabric's curve, a bench test pooled into one, or a clinic's own spread between wearers.

use std::path::PathBuf;

use anyhow::anyhow;
use clap::Args;
use tapeline::assessment::read_and_estimated;
use tapeline::document::Block;
use tapeline::estimate::{AgainstReading, LEAST_READINGS, worn_spread};
use tapeline::garment::{fabric_file, open_fabric};
use tapeline::input::FileKind;
use tapeline::render::terminal;
use tapeline::rules::NumberId;
use tapeline::words;

use super::exit::{Exit, Failure};
use super::files::{Files, What};
use super::options::{Day, Place, Sets};
use super::session::{EVERYTHING, Session};
use super::{seen, sets, stream, writer};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline fabric knit.yaml
  tapeline fabric bench.yaml --fabric-out knit.yaml
  tapeline fabric arm-1.yaml arm-2.yaml arm-3.yaml sleeve-chart.yaml

A bench test stands in a fabric file as
  bench: {kind: strip, width: 5 cm, relaxed: 20 cm, pulls: [{weight: 200 g, length: [23.1 cm, 23.3 cm]}]}
Stretch the piece to the end and back five times first. Hang the heaviest weight, then take weights off, and read
each length while they come off (in the file their order does not matter). A strip hangs from one end (`strip`); a
loop or tube over two bars (`loop`) carries the pull on both sides. Two weights on a strip of any width give the
exponent alone: `strip: {relaxed: 20 cm, pulls: [{weight: 500 g, length: 27.1 cm}, {weight: 200 g, length: 23.2 cm}]}`.

Records with sensor readings, and the charts or garments that were read, give the clinic's own spread between
wearers, from eight readings on.";

/// `fabric`.
#[derive(Debug, Args)]
pub(crate) struct Fabric {
    /// Fabrics with a curve or a bench test; or records with readings and what was read; `-` is standard input
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    /// Write the curve as a plain fabric file
    #[arg(long, value_name = "FILE")]
    fabric_out: Option<PathBuf>,
    #[command(flatten)]
    day: Day,
    #[command(flatten)]
    sets: Sets,
    #[command(flatten)]
    place: Place,
}

/// Runs the command.
pub(crate) fn run(args: &Fabric) -> Result<Exit, Failure> {
    let files = Files::read(&args.files, None, "fabric", &EVERYTHING)?;
    let records = files.names_of(What::Kind(FileKind::Record));
    let (blocks, faulty) =
        if records.is_empty() { curves(args, files)? } else { (spread(args, &records, &files)?, false) };
    args.place.write(&terminal(&blocks, stream::columns()))?;
    Ok(Exit::of_faults(faulty))
}

/// Each fabric as it was read, and whether one is asked about; the one curve written.
fn curves(args: &Fabric, files: Files) -> Result<(Vec<Block>, bool), Failure> {
    let (rules, _) = sets::open(&args.sets)?;
    if let Some(other) = files.all().iter().find(|given| given.what != What::Kind(FileKind::Fabric)) {
        let name = &other.source.name;
        let what = other.what.spoken();
        return Err(anyhow!("{name} is {what}; `fabric` takes it only beside records with readings").into());
    }
    let sources = files.into_sources();
    if args.fabric_out.is_some() && sources.len() > 1 {
        return Err(anyhow!("`--fabric-out` writes one curve; name one fabric").into());
    }
    let (mut blocks, mut faulty) = (Vec::new(), false);
    for source in sources {
        let fabric = open_fabric(source)?;
        if let Some(path) = &args.fabric_out {
            writer::write(fabric_file(&fabric).as_bytes(), path, args.place.force)?;
        }
        blocks.push(Block::lead(fabric.label.to_string()));
        blocks.extend(seen::fabric(&fabric));
        let doubts = seen::fabric_doubts(&fabric, &rules);
        faulty |= !doubts.is_empty();
        blocks.extend(doubts);
    }
    Ok((blocks, faulty))
}

/// How far the clinic's own readings spread about the estimates; each record is a limb of its own.
fn spread(args: &Fabric, records: &[PathBuf], files: &Files) -> Result<Vec<Block>, Failure> {
    if args.fabric_out.is_some() {
        return Err(
            anyhow!("`--fabric-out` writes a curve; beside records use `gradient … --fabric-out`").into()
        );
    }
    let others: Vec<PathBuf> = files
        .all()
        .iter()
        .filter(|given| given.what != What::Kind(FileKind::Record))
        .map(|given| PathBuf::from(&given.source.name))
        .collect();
    let mut rows: Vec<AgainstReading> = Vec::new();
    let mut published = None;
    for record in records {
        let mut paths = vec![record.clone()];
        paths.extend(others.iter().cloned());
        let session = Session::open(&paths, &args.day, &args.sets, None, "fabric", &EVERYTHING)?;
        published = Some(session.setting.number(NumberId::WornSd));
        rows.extend(read_and_estimated(&session.assess()?));
    }
    let count = words::counted(
        rows.len(),
        "reading has an estimate beside it",
        "readings have an estimate beside them",
    );
    let of = words::counted(records.len(), "record", "records");
    let Some(own) = worn_spread(&rows) else {
        let said = format!(
            "{count} in {of}; the clinic's own spread between wearers takes {LEAST_READINGS} or more."
        );
        return Ok(vec![Block::lead(said)]);
    };
    let sd = words::decimal(own.sd_mmhg, 1);
    let now = published.map(|sd| words::decimal(sd, 1)).unwrap_or_default();
    Ok(vec![
        Block::lead(format!("{count} in {of}.")),
        Block::text(format!(
            "Beyond tape, ruler and sensor they lie about the estimate with an SD of {sd} mmHg; {now} mmHg is used as it stands. To use your own, put this line under `numbers:` of your rules file:"
        )),
        Block::text(format!(
            "- {{id: worn-sd, value: {sd} mmHg, basis: house rule, why: \"{} of our own\"}}",
            words::counted(own.count, "reading", "readings")
        )),
    ])
}
