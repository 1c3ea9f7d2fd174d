//! `tapeline inspect`: what was read in a file of any kind.

use std::path::PathBuf;

use clap::Args;
use tapeline::document::Block;
use tapeline::garment::{Chart, Scheme, Schemes, open_chart, open_fabric, open_outfit};
use tapeline::input::{FileKind, Problem, Reader, Source, Table};
use tapeline::inspection::{ChartFault, FaultKind, chart_faults, range_lines};
use tapeline::record::{Record, read_record, read_visits};
use tapeline::render::terminal;
use tapeline::rules::{Rules, read_rules};
use tapeline::words;

use super::exit::{Exit, Failure};
use super::files::{Files, Given, What};
use super::options::{Place, Sets, Tables};
use super::{seen, sets, stream};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline inspect sleeve-chart.yaml
  tapeline inspect leaflet.csv --decimal-comma
  tapeline inspect *.yaml";

/// `inspect`.
#[derive(Debug, Args)]
pub(crate) struct Inspect {
    /// Files of any kind; `-` is standard input
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    #[command(flatten)]
    tables: Tables,
    #[command(flatten)]
    sets: Sets,
    #[command(flatten)]
    place: Place,
}

/// Every kind of file.
const ANY: [What; 11] = [
    What::Kind(FileKind::Record),
    What::Kind(FileKind::Chart),
    What::Kind(FileKind::Garment),
    What::Kind(FileKind::Wrap),
    What::Kind(FileKind::Fabric),
    What::Kind(FileKind::Scheme),
    What::Kind(FileKind::Rules),
    What::Kind(FileKind::Visits),
    What::SizeTable,
    What::VisitTable,
    What::LimbTable,
];

/// Runs the command.
pub(crate) fn run(args: &Inspect) -> Result<Exit, Failure> {
    let (rules, schemes) = sets::open(&args.sets)?;
    let files = Files::read(&args.files, Some(&args.tables), "inspect", &ANY)?;
    let mut blocks = Vec::new();
    let mut problems: Vec<Problem> = Vec::new();
    let mut faulty = false;
    for given in files.all() {
        match seen(given, &schemes, &rules, &mut faulty) {
            Ok(found) => {
                blocks.push(Block::lead(format!("{}: {}", given.source.name, given.what.spoken())));
                blocks.extend(found);
            }
            Err(found) => problems.extend(found),
        }
    }
    if !problems.is_empty() {
        return Err(problems.into());
    }
    args.place.write(&terminal(&blocks, stream::columns()))?;
    Ok(Exit::of_faults(faulty))
}

fn seen(
    given: &Given,
    schemes: &Schemes,
    rules: &Rules,
    faulty: &mut bool,
) -> Result<Vec<Block>, Vec<Problem>> {
    let source = given.source.clone();
    Ok(match given.what {
        What::Kind(FileKind::Record) => seen::record(&record(source)?),
        What::Kind(FileKind::Visits) => vec![Block::list(visits(source)?)],
        What::Kind(FileKind::Chart) => chart(&open_chart(source, schemes)?.chart, rules, faulty),
        What::Kind(FileKind::Garment | FileKind::Wrap) => seen::outfit(&open_outfit(source, schemes)?.outfit),
        What::Kind(FileKind::Fabric) => seen::fabric(&open_fabric(source)?),
        What::Kind(FileKind::Scheme) => seen::scheme(&open_scheme(source)?),
        What::Kind(FileKind::Rules) => seen::rules(&read_rules(Some(source))?),
        What::SizeTable => {
            let understood = Table::read(source.clone()).map_err(|problem| vec![problem])?.understood();
            let mut blocks = Vec::new();
            if !understood.is_empty() {
                blocks.push(Block::text(format!("Understood: {}.", understood.join(", "))));
            }
            blocks.extend(chart(&open_chart(source, schemes)?.chart, rules, faulty));
            blocks
        }
        What::VisitTable | What::LimbTable => {
            let table = Table::read(source).map_err(|problem| vec![problem])?;
            vec![Block::text(format!(
                "{}: {}.",
                words::counted(table.rows().len(), "row", "rows"),
                table.header().join(", ")
            ))]
        }
    })
}

/// A chart as read, its ranges drawn, and what is odd in it; faults, not remarks, count for the exit status.
fn chart(chart: &Chart, rules: &Rules, faulty: &mut bool) -> Vec<Block> {
    let mut blocks = seen::chart(chart);
    blocks.push(Block::heading("Ranges"));
    blocks.push(Block::Verbatim(range_lines(chart, stream::columns()).join("\n")));
    let found = chart_faults(chart, rules);
    let (remarks, odd): (Vec<&ChartFault>, Vec<&ChartFault>) =
        found.iter().partition(|one| one.kind.is_remark());
    *faulty |= !odd.is_empty();
    let mut said: Vec<String> = odd
        .iter()
        .take(MOST_FAULTS)
        .map(|one| format!("{} ({})", one.sentence(chart), one.kind.id()))
        .collect();
    if odd.len() > MOST_FAULTS {
        said.push(format!("{} more are not shown.", odd.len() - MOST_FAULTS));
    }
    said.extend(overlaps(chart, &remarks));
    if !said.is_empty() {
        blocks.push(Block::heading("To look at"));
        blocks.push(Block::List(said));
    }
    blocks
}

/// One sentence for the overlaps of each measure.
fn overlaps(chart: &Chart, remarks: &[&ChartFault]) -> Vec<String> {
    let of = |mark| {
        let widths =
            remarks.iter().filter(|one| one.landmark == Some(mark)).filter_map(|one| match one.kind {
                FaultKind::Overlap(width, _) => Some(width),
                _ => None,
            });
        let widths: Vec<i64> = widths.collect();
        let (least, most) = (widths.iter().min()?, widths.iter().max()?);
        let by = if least == most {
            words::cm(*most)
        } else {
            format!("{} to {}", words::cm_short(*least), words::cm(*most))
        };
        Some(format!("Neighbouring sizes overlap by {by} {}.", words::at(mark)))
    };
    chart.measures().into_iter().filter_map(of).collect()
}

/// Most faults of one chart that are shown (house rule, as for problems).
const MOST_FAULTS: usize = 50;

fn record(source: Source) -> Result<Record, Vec<Problem>> {
    let reader = Reader::new(source).map_err(|problem| vec![problem])?;
    let record = read_record(&reader);
    let problems = reader.problems();
    match record {
        Some(record) if problems.is_empty() => Ok(record),
        _ => Err(problems),
    }
}

/// The files that a list of visits names.
fn visits(source: Source) -> Result<Vec<String>, Vec<Problem>> {
    let reader = Reader::new(source).map_err(|problem| vec![problem])?;
    let paths = read_visits(&reader).unwrap_or_default();
    let problems = reader.problems();
    if problems.is_empty() {
        Ok(paths.iter().map(|(path, _)| path.display().to_string()).collect())
    } else {
        Err(problems)
    }
}

fn open_scheme(source: Source) -> Result<Scheme, Vec<Problem>> {
    let schemes = Schemes::with_files(vec![source])?;
    let own = schemes.ids().first().map(|id| (*id).to_owned());
    own.and_then(|id| schemes.find(&id)).ok_or_else(Vec::new)
}
