//! `tapeline batch`: one row out for each limb of a table.

use std::num::NonZeroUsize;
use std::path::PathBuf;

use anyhow::anyhow;
use clap::{Args, ValueEnum};
use tapeline::caseload::{Batch, BatchEnd, BatchForm, run_batch};
use tapeline::words;

use super::exit::{Exit, Failure};
use super::long_output::LongOutput;
use super::options::{Place, Sets, Tables};
use super::progress::Progress;
use super::{caseload, say};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline batch limbs.csv sleeve-chart.yaml -o sized.csv
  tapeline batch limbs.csv charts/*.yaml --columns id,verdict,size,pressures
  zcat limbs.csv.gz | tapeline batch - sleeve-chart.yaml --format jsonl

The table has a column `id` and one for each girth with its unit: id,wrist_cm,forearm_cm,…; where marks stand
may be told as wrist_at_cm, else the usual places count. An id that is blank or stands in an earlier row is told
in the column `problem`. Of several charts the row is of the one that ranks best, in
the order of `check` (`tapeline explain ranking`); what a record adds, as allergies, is not known here.";

/// `batch`.
#[derive(Debug, Args)]
pub(crate) struct BatchArgs {
    /// A table of limbs and size charts, in any order; `-` is the table on standard input
    #[arg(required = true, value_name = "LIMBS.csv CHART")]
    files: Vec<PathBuf>,
    /// The form of the rows
    #[arg(long, value_enum, default_value_t = Rows::Csv)]
    format: Rows,
    /// Only these columns, as id,verdict,size,pressures; the chances of the fall and of the same size cost most, and
    /// several charts are ranked by the whole fall whatever is asked for
    #[arg(long, value_name = "NAMES", value_delimiter = ',')]
    columns: Option<Vec<String>>,
    /// Workers; all cores otherwise
    #[arg(long, value_name = "N")]
    threads: Option<NonZeroUsize>,
    #[command(flatten)]
    tables: Tables,
    #[command(flatten)]
    sets: Sets,
    #[command(flatten)]
    place: Place,
}

/// Forms of the rows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Rows {
    /// Comma-separated values with a header
    Csv,
    /// One JSON object a line
    Jsonl,
}

/// Runs the command.
pub(crate) fn run(args: &BatchArgs) -> Result<Exit, Failure> {
    let opened = caseload::open("batch", &args.files, &args.tables, &args.sets)?;
    let form = if args.format == Rows::Csv { BatchForm::Csv } else { BatchForm::Jsonl };
    let batch = Batch::of(opened.charts, opened.columns, args.columns.as_deref(), form, &opened.rules)
        .map_err(|what| anyhow!(what))?;
    let threads = caseload::workers(args.threads);
    let mut out = LongOutput::begin(args.place.output.as_deref(), args.place.force)?;
    let mut progress = Progress::begin(opened.bytes);
    let end =
        run_batch(&batch, opened.blocks, threads, &mut out, &mut |read, rows| progress.told(read, rows));
    progress.end();
    if let Some(problem) = end.input {
        out.drop_it();
        return Err(problem.into());
    }
    if let Some(fault) = end.output {
        let gone = fault.kind() == std::io::ErrorKind::BrokenPipe;
        out.drop_it();
        if gone {
            return Ok(Exit::Fine);
        }
        return Err(anyhow::Error::new(fault).context("the rows could not be written").into());
    }
    out.finish()?;
    tell(&end, batch.writes_problems());
    Ok(Exit::of_faults(end.problems > 0))
}

/// What is said of the rows beside them.
fn tell(end: &BatchEnd, has_problems: bool) {
    let rows = |count: u64| {
        let count = words::counted(usize::try_from(count).unwrap_or(usize::MAX), "row", "rows");
        format!("{count} of {}", end.rows)
    };
    if !has_problems {
        end.told.iter().for_each(|what| say::note(what));
    }
    if end.unusual > 0 {
        say::note(&format!(
            "{} with a girth that adults rarely have: look at units and digits; the column `findings` has \
             `unusual-girth` there",
            rows(end.unusual)
        ));
    }
    if end.nameless > 0 {
        say::note(&format!("{} without an id; `row` and its number stand in its place", rows(end.nameless)));
    }
    if end.repeated > 0 {
        say::note(&format!(
            "{} with the id of an earlier row: what is joined by `id` may get another limb's size",
            rows(end.repeated)
        ));
    }
    if end.problems > 0 {
        let count = usize::try_from(end.problems + end.nameless + end.repeated).unwrap_or(usize::MAX);
        let why = match (has_problems, count > end.told.len()) {
            (true, _) => "; the column `problem` says why",
            (false, true) => "; the first are told above, the column `problem` has all",
            (false, false) => "",
        };
        say::note(&format!("{} could not be read{why}", rows(end.problems)));
    }
}
