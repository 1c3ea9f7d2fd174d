//! `tapeline cover`: the share of a caseload that each size of a chart serves.

use std::path::PathBuf;

use anyhow::anyhow;
use clap::Args;
use tapeline::anatomy::Landmark;
use tapeline::caseload::{Covered, Prepared, SizeOf, cover, design, girths, sizes};
use tapeline::document::{Block, Column, Table};
use tapeline::garment::Chart;
use tapeline::render::terminal;
use tapeline::words;

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
    #[command(flatten)]
    tables: Tables,
    #[command(flatten)]
    sets: Sets,
    #[command(flatten)]
    place: Place,
}

/// Runs the command.
pub(crate) fn run(args: &Cover) -> Result<Exit, Failure> {
    let opened = caseload::open("cover", &args.files, &args.tables, &args.sets)?;
    if let Some(count) = args.design {
        return designed(args, opened, usize::from(count));
    }
    let (labels, charts): (Vec<String>, Vec<Prepared>) = opened.charts.into_iter().unzip();
    let known_fall = !args.without_fall && charts.iter().any(|one| one.chart.has_relaxed());
    let covered = cover(&charts, &opened.columns, opened.blocks, known_fall)?;
    for told in &covered.told {
        say::note(told);
    }
    let charts: Vec<&Chart> = charts.iter().map(|one| &one.chart).collect();
    args.place.write(&terminal(&blocks(&covered, &charts, &labels, known_fall), stream::columns()))?;
    Ok(Exit::of_faults(covered.problems > 0))
}

fn blocks(covered: &Covered, charts: &[&Chart], labels: &[String], known_fall: bool) -> Vec<Block> {
    let found = &covered.coverage;
    let share = |count: u64| words::fraction_percent(share_of(count, found.cases));
    let limbs = words::counted(usize::try_from(found.cases).unwrap_or(usize::MAX), "limb", "limbs");
    let mut blocks = vec![Block::lead(format!(
        "{limbs}, {} served by {}.",
        share(found.served_by_any),
        if charts.len() == 1 { "the chart" } else { "the charts together" }
    ))];
    if found.not_judged > 0 {
        blocks.push(Block::text(format!(
            "{} with a girth missing that is asked for.",
            share(found.not_judged)
        )));
    }
    if covered.problems > 0 {
        blocks.push(Block::strong(format!("{} rows could not be read and are left out.", covered.problems)));
    }
    for (number, (chart, label)) in charts.iter().zip(labels).enumerate() {
        blocks.push(Block::heading(label.as_str()));
        let fall = if known_fall {
            format!(", {} with a fall known to fall", share(found.served_falls(number)))
        } else {
            String::new()
        };
        blocks.push(Block::text(format!("Serves {}{fall}.", share(found.served(number)))));
        let mut columns = vec![Column::words("Size"), Column::numbers("Chosen", "%")];
        if known_fall {
            columns.push(Column::numbers("And falls", "%"));
        }
        columns.push(Column::numbers("Only this size", "%"));
        let mut table = Table::new("Sizes", columns);
        for (size, one) in chart.sizes.iter().enumerate() {
            let of = SizeOf { chart: number, size };
            let cell = |count: u64| words::decimal(100.0 * share_of(count, found.cases), 1);
            let mut cells = vec![one.label.to_string(), cell(found.chosen(of, charts))];
            if known_fall {
                cells.push(cell(found.falls(of, charts)));
            }
            cells.push(cell(found.only(of, charts)));
            table.push(cells);
        }
        blocks.push(Block::Table(table));
        let missed = found.missed(number);
        if !missed.is_empty() {
            let said = missed.iter().map(|(how, count)| {
                let side = if how.tight { "too tight" } else { "too loose" };
                format!("{} missed, {side} {}", share(*count), words::at(how.landmark))
            });
            blocks.push(Block::heading("Missed, by the girth that misses most at the nearest size"));
            blocks.push(Block::list(said.collect::<Vec<_>>()));
        }
    }
    blocks.extend(stock(covered, charts, labels));
    blocks
}

/// Which sizes to stock first.
fn stock(covered: &Covered, charts: &[&Chart], labels: &[String]) -> Vec<Block> {
    let found = &covered.coverage;
    let several = charts.len() > 1;
    let mut columns = vec![Column::numbers("Step", "")];
    if several {
        columns.push(Column::words("Chart"));
    }
    columns.extend([Column::words("Size"), Column::numbers("Adds", "%"), Column::numbers("So far", "%")]);
    let mut table = Table::new("Stock first", columns);
    for (step, one) in found.stock(charts).iter().enumerate() {
        let size = charts.get(one.size.chart).and_then(|chart| chart.sizes.get(one.size.size));
        let cell = |count: u64| words::decimal(100.0 * share_of(count, found.cases), 1);
        let mut cells = vec![(step + 1).to_string()];
        if several {
            cells.push(labels.get(one.size.chart).cloned().unwrap_or_default());
        }
        cells.push(size.map_or_else(String::new, |size| size.label.to_string()));
        cells.extend([cell(one.adds), cell(one.so_far)]);
        table.push(cells);
    }
    let idle = sizes(charts).len() - table.rows.len();
    let mut blocks = vec![
        Block::heading("Which sizes to stock first"),
        Block::text("Each step is the size that serves most limbs beyond those before it."),
        Block::Table(table),
    ];
    if idle > 0 {
        blocks.push(Block::text(format!(
            "{} would serve none beyond these.",
            words::counted(idle, "size", "sizes")
        )));
    }
    blocks
}

/// Most limbs that sizes are placed for (house rule: some seconds).
const MOST_LIMBS: usize = 2000;

/// K sizes of the first chart's shape.
fn designed(args: &Cover, opened: caseload::Opened, count: usize) -> Result<Exit, Failure> {
    let Some((label, prepared)) = opened.charts.first() else {
        return Err(anyhow!("`cover --design` needs a chart for the shape of its sizes").into());
    };
    let chart = &prepared.chart;
    let marks = chart.measures();
    let widths: Vec<i64> = marks.iter().filter_map(|mark| usual_width(chart, *mark)).collect();
    if widths.len() != marks.len() {
        return Err(
            anyhow!("a size of {label} has no range with both ends, so there is no shape to place").into()
        );
    }
    let (limbs, seen) = girths(&marks, &opened.columns, opened.blocks, MOST_LIMBS)?;
    let found = design(&limbs, &widths, count);
    let of = |count: usize| {
        let (count, all) = (u64::try_from(count).unwrap_or(0), u64::try_from(limbs.len()).unwrap_or(0));
        words::fraction_percent(share_of(count, all))
    };
    let mut columns = vec![Column::numbers("Size", "")];
    columns.extend(marks.iter().map(|mark| Column::ranges(words::label(*mark), "cm")));
    let mut table = Table::new("Sizes", columns);
    for (number, size) in found.sizes.iter().enumerate() {
        let ends = size.iter().zip(&widths);
        let cells =
            ends.map(|(low, width)| format!("{}–{}", words::cm_short(*low), words::cm_short(low + width)));
        table.push(std::iter::once((number + 1).to_string()).chain(cells).collect());
    }
    let sure = if found.served == found.bound {
        "No others of this shape serve more.".to_owned()
    } else if found.bound == limbs.len() {
        "How many the best of this shape would serve is not known.".to_owned()
    } else {
        format!("No others of this shape serve more than {}.", of(found.bound))
    };
    let mut blocks = vec![
        Block::lead(format!(
            "{} as wide as most of {label} serve {} of {}. {sure}",
            words::counted(found.sizes.len(), "size", "sizes"),
            of(found.served),
            words::counted(limbs.len(), "limb", "limbs")
        )),
        Block::Table(table),
    ];
    if limbs.len() < seen {
        blocks.push(Block::text(format!("Every {}th limb of {seen} was taken.", seen.div_ceil(limbs.len()))));
    }
    args.place.write(&terminal(&blocks, stream::columns()))?;
    Ok(Exit::Fine)
}

/// The middle width of a measure's ranges, tenths of a millimetre.
fn usual_width(chart: &Chart, mark: Landmark) -> Option<i64> {
    let mut widths: Vec<i64> = chart.sizes.iter().filter_map(|size| size.range_at(mark)?.width()).collect();
    widths.sort_unstable();
    widths.get(widths.len() / 2).copied()
}

/// A share of all cases.
#[expect(clippy::cast_precision_loss, reason = "counts far below 2^53")]
fn share_of(count: u64, all: u64) -> f64 {
    if all == 0 { 0.0 } else { count as f64 / all as f64 }
}
