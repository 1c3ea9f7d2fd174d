//! `tapeline inspect`: what was read in a file of any kind.

use std::path::PathBuf;

use anyhow::anyhow;
use clap::{Args, ValueEnum};
use tapeline::document::{Block, Figure, Head, Leaf, Reader as For, Sheet};
use tapeline::garment::{Chart, Scheme, Schemes, open_chart, open_fabric, open_outfit};
use tapeline::input::{FileKind, Problem, Reader, Source, Table};
use tapeline::inspection::{ChartFault, FaultKind, chart_faults, range_lines, range_scenes};
use tapeline::record::{Record, read_record, read_visits};
use tapeline::render::{Paper, html, terminal};
use tapeline::rules::{Rules, read_rules};
use tapeline::words;

use super::exit::{Exit, Failure};
use super::files::{Files, Given, What};
use super::options::{Place, Sets, Tables};
use super::{seen, sets, stream};

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline inspect sleeve-chart.yaml
  tapeline inspect leaflet.csv --decimal-comma
  tapeline inspect sleeve-chart.yaml -o chart.html      the ranges drawn on a page
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
    /// The form; without it the ending of the file decides, else text
    #[arg(long, value_enum)]
    format: Option<Shape>,
    #[command(flatten)]
    place: Place,
}

/// Forms of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Shape {
    /// For reading in a terminal
    Text,
    /// One page for a browser, ready to print
    Html,
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
    // Wrong endings are told before any file is read.
    let shape = shape(args)?;
    let (rules, schemes) = sets::open(&args.sets)?;
    let files = Files::read(&args.files, Some(&args.tables), "inspect", &ANY)?;
    let mut read: Vec<(&Given, Vec<Block>)> = Vec::new();
    let mut problems: Vec<Problem> = Vec::new();
    let mut faulty = false;
    for given in files.all() {
        match seen(given, &schemes, &rules, shape, &mut faulty) {
            Ok(found) => read.push((given, found)),
            Err(found) => problems.extend(found),
        }
    }
    if !problems.is_empty() {
        return Err(problems.into());
    }
    let text = match shape {
        Shape::Text => {
            let mut blocks = Vec::new();
            for (given, found) in read {
                blocks.push(Block::lead(format!("{}: {}", given.source.name, given.what.spoken())));
                blocks.extend(found);
            }
            terminal(&blocks, stream::columns())
        }
        Shape::Html => html(&sheet(read), Paper::A4),
    };
    args.place.write(&text)?;
    Ok(Exit::of_faults(faulty))
}

/// The form: as asked for, else by the file's ending, else text.
fn shape(args: &Inspect) -> anyhow::Result<Shape> {
    let path = args.place.output.as_deref().filter(|path| path.as_os_str() != "-");
    if let Some(shape) = args.format {
        return Ok(shape);
    }
    let Some(path) = path else { return Ok(Shape::Text) };
    match path.extension().and_then(|ending| ending.to_str()).map(str::to_ascii_lowercase).as_deref() {
        Some("html" | "htm") => Ok(Shape::Html),
        Some("txt" | "text") | None => Ok(Shape::Text),
        // An input of the run is refused as such, whatever its ending, where it would be written.
        Some(_) if args.files.iter().any(|file| file.file_name() == path.file_name()) => Ok(Shape::Text),
        Some(other) => Err(anyhow!(
            "{}: `.{other}` is no form of this page; `.html` and `.txt` are known, or say `--format`",
            path.display()
        )),
    }
}

/// What was read as a sheet: a leaf for each file.
fn sheet(read: Vec<(&Given, Vec<Block>)>) -> Sheet {
    let leaves = read.into_iter().map(|(given, blocks)| Leaf {
        reader: For::Fitter,
        head: Head { bold: given.source.name.clone(), plain: given.what.spoken().to_owned() },
        title: format!("{}: {}", given.source.name, given.what.spoken()),
        blocks,
        language: "en-GB".to_owned(),
        numbered: "page {page} of {pages}".to_owned(),
        apart: false,
    });
    Sheet {
        title: "Files as they were read".to_owned(),
        leaves: leaves.collect(),
        made_on: String::new(),
        made_by: format!("tapeline {}", env!("CARGO_PKG_VERSION")),
    }
}

fn seen(
    given: &Given,
    schemes: &Schemes,
    rules: &Rules,
    shape: Shape,
    faulty: &mut bool,
) -> Result<Vec<Block>, Vec<Problem>> {
    let source = given.source.clone();
    Ok(match given.what {
        What::Kind(FileKind::Record) => super::seen_record::record(&record(source)?),
        What::Kind(FileKind::Visits) => vec![Block::list(visits(source)?)],
        What::Kind(FileKind::Chart) => chart(&open_chart(source, schemes)?.chart, rules, shape, faulty),
        What::Kind(FileKind::Garment | FileKind::Wrap) => seen::outfit(&open_outfit(source, schemes)?.outfit),
        What::Kind(FileKind::Fabric) => {
            let fabric = open_fabric(source)?;
            let doubts = seen::fabric_doubts(&fabric, rules);
            *faulty |= !doubts.is_empty();
            seen::fabric(&fabric).into_iter().chain(doubts).collect()
        }
        What::Kind(FileKind::Scheme) => seen::scheme(&open_scheme(source)?),
        What::Kind(FileKind::Rules) => seen::rules(&read_rules(Some(source))?),
        What::SizeTable => {
            let understood = Table::read(source.clone()).map_err(|problem| vec![problem])?.understood();
            let mut blocks = Vec::new();
            if !understood.is_empty() {
                blocks.push(Block::text(format!("Understood: {}.", understood.join(", "))));
            }
            blocks.extend(chart(&open_chart(source, schemes)?.chart, rules, shape, faulty));
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
fn chart(chart: &Chart, rules: &Rules, shape: Shape, faulty: &mut bool) -> Vec<Block> {
    let mut blocks = seen::chart(chart);
    if chart.turned {
        blocks.push(Block::text("The file lists its sizes large to small; they are taken small to large."));
    }
    blocks.push(Block::heading("Ranges"));
    match shape {
        Shape::Text => blocks.push(Block::Verbatim(range_lines(chart, stream::columns()).join("\n"))),
        Shape::Html => {
            blocks.extend(range_scenes(chart).into_iter().map(|scene| Block::Figure(Figure::from(scene))));
        }
    }
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
    said.extend(step_of_gaps(chart, &odd));
    said.extend(overlaps(chart, &remarks));
    if !said.is_empty() {
        blocks.push(Block::heading("To look at"));
        blocks.push(Block::List(said));
    }
    blocks
}

/// Steps in which charts print their girths: 0.1, 0.5 and 1 cm, in tenths of a millimetre (house rule).
const PRINTED_STEPS: [i64; 3] = [10, 50, 100];

/// Several gaps of one width that is a step of print: the chart may mean that girths are read to it.
fn step_of_gaps(chart: &Chart, odd: &[&ChartFault]) -> Option<String> {
    let mut gaps = odd.iter().filter_map(|one| match one.kind {
        FaultKind::Gap(width) => Some(width),
        _ => None,
    });
    let (first, second) = (gaps.next()?, gaps.next()?);
    let alike = first == second && gaps.all(|one| one == first) && PRINTED_STEPS.contains(&first);
    (alike && chart.printed_step.is_none()).then(|| {
        let width = words::cm(first);
        format!(
            "Every gap is {width}: if the chart means girths read to {width}, it leaves none; write `printed_step: {width}` in it."
        )
    })
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
