//! `tapeline volume`: limb volume, the two sides, the change over visits.

use std::path::{Path, PathBuf};

use anyhow::anyhow;
use clap::{Args, ValueEnum};
use tapeline::render::{self, Paper};
use tapeline::report::VolumeReport;

use super::exit::{Exit, Failure};
use super::options::{Day, Place, Sets, Tables};
use super::session::{Session, VISITS};
use super::stream;

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline volume arm.yaml
  tapeline volume visit-1.yaml visit-2.yaml visit-3.yaml
  tapeline volume history.csv arm.yaml -o course.html
  tapeline volume visits.yaml --format json";

/// `volume`.
#[derive(Debug, Args)]
pub(crate) struct Volume {
    /// Records of one client and limb, a list of visits or a table of them; `-` is standard input
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    #[command(flatten)]
    day: Day,
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
    /// `tapeline.volume/1`, for other programs
    Json,
    /// One page for a browser, ready to print
    Html,
    /// The drawing of the course alone
    Svg,
}

/// Runs the command.
pub(crate) fn run(args: &Volume) -> Result<Exit, Failure> {
    // Wrong endings are told before any file is read.
    let shape = shape(args)?;
    let session = Session::open(&args.files, &args.day, &args.sets, Some(&args.tables), "volume", &VISITS)?;
    let report = VolumeReport::of(&session.assess()?);
    let text = match shape {
        Shape::Text => render::terminal(&render::volume_page(&report), stream::columns()),
        Shape::Json => serde_json::to_string_pretty(&report).map_err(anyhow::Error::from)? + "\n",
        Shape::Html => render::html(&render::volume_sheet(&report), Paper::A4),
        Shape::Svg => render::volume_scene(&report)
            .map(|scene| render::svg_file(&scene))
            .ok_or_else(|| anyhow!("a drawing of the course needs two visits with a volume"))?,
    };
    args.place.write(&text)?;
    Ok(Exit::Fine)
}

/// The form: as asked for, else by the file's ending, else text.
fn shape(args: &Volume) -> anyhow::Result<Shape> {
    match (args.format, args.place.output.as_deref()) {
        (Some(shape), _) => Ok(shape),
        (None, Some(path)) if path.as_os_str() != "-" => by_ending(path),
        (None, _) => Ok(Shape::Text),
    }
}

fn by_ending(path: &Path) -> anyhow::Result<Shape> {
    match path.extension().and_then(|ending| ending.to_str()).map(str::to_ascii_lowercase).as_deref() {
        Some("html" | "htm") => Ok(Shape::Html),
        Some("svg") => Ok(Shape::Svg),
        Some("json") => Ok(Shape::Json),
        Some("txt" | "text") | None => Ok(Shape::Text),
        Some(other) => Err(anyhow!(
            "{}: `.{other}` is no form of this page; `.html`, `.svg`, `.json` and `.txt` are known, or say `--format`",
            path.display()
        )),
    }
}
