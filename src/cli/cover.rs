//! `tapeline cover`: the share of a caseload that each size of a chart serves.

use std::num::NonZeroUsize;
use std::path::PathBuf;

use anyhow::anyhow;
use clap::{Args, ValueEnum};
use tapeline::anatomy::Landmark;
use tapeline::caseload::{Prepared, cover, design, girths};
use tapeline::garment::Chart;
use tapeline::quantity::Girth;
use tapeline::render::{cover_page, terminal};
use tapeline::report::{CoverReport, DesignBlock};

use super::exit::{Exit, Failure};
use super::options::{Place, Sets, Tables};
use super::{caseload, say, stream};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline cover limbs.csv sleeve-chart.yaml
  tapeline cover limbs.csv chart-a.yaml chart-b.yaml      side by side and together
  tapeline cover limbs.csv sleeve-chart.yaml --design 6   six sizes as wide, placed anew";

/// `cover`.
#[derive(Debug, Args)]
pub(crate) struct Cover {
    /// A table of limbs and size charts, in any order; `-` is the table on standard input
    #[arg(required = true, value_name = "LIMBS.csv CHART")]
    files: Vec<PathBuf>,
    /// In place of the shares: K sizes as wide as those of the chart, placed so that they serve most limbs
    #[arg(long, value_name = "K", value_parser = clap::value_parser!(u8).range(1..=40))]
    design: Option<u8>,
    /// Leave out whether the fall is known to fall; that costs most
    #[arg(long)]
    without_fall: bool,
    /// Workers; all cores otherwise
    #[arg(long, value_name = "N")]
    threads: Option<NonZeroUsize>,
    /// The form of the report
    #[arg(long, value_enum, default_value_t = Shape::Text)]
    format: Shape,
    #[command(flatten)]
    tables: Tables,
    #[command(flatten)]
    sets: Sets,
    #[command(flatten)]
    place: Place,
}

/// Forms of the report.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Shape {
    /// For reading in a terminal
    Text,
    /// `tapeline.cover/1`, for other programs
    Json,
}

/// Runs the command.
pub(crate) fn run(args: &Cover) -> Result<Exit, Failure> {
    let opened = caseload::open("cover", &args.files, &args.tables, &args.sets)?;
    if let Some(count) = args.design {
        return designed(args, opened, usize::from(count));
    }
    let (labels, charts): (Vec<String>, Vec<Prepared>) = opened.charts.into_iter().unzip();
    let known_fall = !args.without_fall && charts.iter().any(|one| one.chart.has_relaxed());
    let covered =
        cover(&charts, &opened.columns, opened.blocks, known_fall, caseload::workers(args.threads))?;
    let charts: Vec<&Chart> = charts.iter().map(|one| &one.chart).collect();
    written(args, &CoverReport::of(&covered, &charts, &labels, known_fall))
}

/// Writes the report; rows that could not be read are told beside a text.
fn written(args: &Cover, report: &CoverReport) -> Result<Exit, Failure> {
    for row in &report.rows {
        say::note(&format!("row {}: {}", row.row, row.problem));
    }
    let text = match args.format {
        Shape::Text => terminal(&cover_page(report), stream::columns()),
        Shape::Json => serde_json::to_string_pretty(report).map_err(anyhow::Error::from)? + "\n",
    };
    args.place.write(&text)?;
    Ok(Exit::of_faults(report.problems > 0))
}

/// Most limbs that sizes are placed for (house rule: a few seconds on one core).
const MOST_LIMBS: usize = 2000;

/// K sizes of the first chart's shape.
fn designed(args: &Cover, opened: caseload::Opened, count: usize) -> Result<Exit, Failure> {
    let [(label, prepared)] = opened.charts.as_slice() else {
        return Err(anyhow!("`cover --design` takes the shape of its sizes from one chart; name one").into());
    };
    let chart = &prepared.chart;
    let marks = chart.measures();
    let widths: Vec<i64> = marks.iter().filter_map(|mark| usual_width(chart, *mark)).collect();
    if widths.len() != marks.len() {
        return Err(
            anyhow!("a size of {label} has no range with both ends, so there is no shape to place").into()
        );
    }
    let mut read = girths(&marks, &opened.columns, opened.blocks, MOST_LIMBS)?;
    // Compared as the chart compares them: rounded to its printed step.
    for tenths in read.limbs.iter_mut().flatten() {
        *tenths =
            Girth::from_tenths(*tenths).map_or(*tenths, |one| one.rounded_to(chart.printed_step).tenths());
    }
    if read.limbs.is_empty() {
        return Err(anyhow!("no limb of the table has every girth that {label} asks for").into());
    }
    let found = design(&read.limbs, &widths, count);
    let block = DesignBlock::of(&found, &read, chart, label, &widths, &opened.estimate);
    written(args, &CoverReport::of_design(block, read.rows, read.problems, &read.told))
}

/// The middle width of a measure's ranges, tenths of a millimetre.
fn usual_width(chart: &Chart, mark: Landmark) -> Option<i64> {
    let mut widths: Vec<i64> = chart.sizes.iter().filter_map(|size| size.range_at(mark)?.width()).collect();
    widths.sort_unstable();
    widths.get(widths.len() / 2).copied()
}
