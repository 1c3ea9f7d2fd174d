//! Owns the options of `new` and the choice of its way: guided, template, or an empty form.

use std::io::IsTerminal as _;
use std::path::{Path, PathBuf};

use anyhow::anyhow;
use clap::{Args, ValueEnum};
use tapeline::input::{Draft, FileKind, Source};

use super::ask::Ask;
use super::kept::Kept;
use super::{blank, chart, engine, fabric, garment, record, template};
use crate::cli::exit::{Exit, Failure};
use crate::cli::options::{Day, Sets};
use crate::cli::{clock, say, sets, stream, writer};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline new record arm.yaml             measure and answer, step by step; stop and go on at any time
  tapeline new chart sleeve-chart.yaml     the marks first, then a row for each size
  tapeline new chart > sleeve-chart.yaml   a template to fill in
  tapeline new record --blank form.pdf     an empty form for a pencil";

/// `new`.
#[derive(Debug, Args)]
pub(crate) struct New {
    /// What to write
    kind: Kind,
    /// The file; without it a template goes to standard output
    #[arg(value_name = "FILE")]
    file: Option<PathBuf>,
    /// Print the empty form of a record to a file (.pdf, .html or .txt; `-` prints it as text)
    #[arg(long, value_name = "FILE", conflicts_with = "file")]
    blank: Option<PathBuf>,
    /// Replace an existing form
    #[arg(long, requires = "blank")]
    force: bool,
    #[command(flatten)]
    day: Day,
    #[command(flatten)]
    sets: Sets,
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

impl Kind {
    fn kind(self) -> FileKind {
        match self {
            Self::Record => FileKind::Record,
            Self::Chart => FileKind::Chart,
            Self::Garment => FileKind::Garment,
            Self::Fabric => FileKind::Fabric,
        }
    }
}

/// Runs the command.
pub(crate) fn run(args: &New) -> Result<Exit, Failure> {
    let kind = args.kind.kind();
    if let Some(path) = &args.blank {
        if args.kind != Kind::Record {
            return Err(anyhow!(
                "`--blank` prints the form of a record; say `new record --blank {}`",
                path.display()
            )
            .into());
        }
        let (rules, _) = sets::open(&args.sets)?;
        writer::write(&blank::form(&rules, clock::today(args.day.today), path)?, path, args.force)?;
        return Ok(Exit::Fine);
    }
    let Some(path) = &args.file else {
        if std::io::stdout().is_terminal() && std::io::stdin().is_terminal() {
            let name = kind.word();
            say::note(&format!("to be guided, name the file: tapeline new {name} my-{name}.yaml"));
        }
        stream::write(template::of(kind).as_bytes())?;
        return Ok(Exit::Fine);
    };
    guided(args, kind, path)
}

fn guided(args: &New, kind: FileKind, path: &Path) -> Result<Exit, Failure> {
    if path.as_os_str() == "-" {
        return Err(anyhow!(
            "a guided entry is kept in a file; name one, or leave the name out for a template"
        )
        .into());
    }
    let (rules, schemes) = sets::open(&args.sets)?;
    let kept = Kept::lock(path)?;
    let mut draft = if path.exists() {
        Draft::read(&Source::read_as(path, kind.spoken())?, kind)?
    } else {
        Draft::new(kind)
    };
    let schema = format!("{}.schema.json", kind.word());
    if path.with_file_name(&schema).is_file() {
        draft.name_schema(&schema);
    }
    let today = clock::today(args.day.today);
    let mut ask = Ask::new();
    let ended = match kind {
        FileKind::Chart => engine::run(&chart::Script { schemes }, draft, &kept, &mut ask),
        FileKind::Garment => engine::run(&garment::Script { schemes }, draft, &kept, &mut ask),
        FileKind::Fabric => engine::run(&fabric::Script, draft, &kept, &mut ask),
        _ => engine::run(&record::Script { rules, schemes, today }, draft, &kept, &mut ask),
    }?;
    Ok(if ended { Exit::Fine } else { Exit::Attention })
}
