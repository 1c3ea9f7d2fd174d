//! Owns the flags and their help.

use std::path::PathBuf;

use clap::{Args as ClapArgs, Parser, Subcommand, ValueEnum};
use jiff::civil::Date;

use super::sheet_args::Sheet;

/// Checks limb girths against garment size charts, estimates the interface pressure along the limb
/// and prints what has to be looked at before a fitting. It estimates; a certified fitter decides.
#[derive(Debug, Parser)]
#[command(name = "tapeline", version, arg_required_else_help = true)]
#[command(
    after_help = "Exit status: 0 try-on, or nothing to report · 1 any other outcome, or faults found · 2 no report (usage, input or output problem) · 3 stop"
)]
pub(crate) struct Args {
    /// What to do.
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Check a record: screening, sizing against each chart, pressure and its fall, volume.
    Check(Check),
    /// Print a fitting sheet: a leaf for the fitter and the file, a leaf for the client.
    Sheet(Sheet),
    /// What a finding, question, scheme, number or outcome means, its rule, its basis, what to do next.
    Explain(Explain),
    /// Estimate one garment's pressure along the limb and say whether it falls toward the trunk.
    Gradient(Gradient),
    /// Work out the relaxed girths of a made-to-measure garment for a wanted pressure.
    Pattern(Pattern),
    /// Show a fabric's tension curve, or pool a bench test into one.
    Fabric(FabricArgs),
}

/// `check`.
#[derive(Debug, ClapArgs)]
pub(crate) struct Check {
    /// The measurement record (YAML); `-` is standard input.
    pub(crate) record: PathBuf,
    /// A size chart (YAML); may be given several times.
    #[arg(long, value_name = "FILE")]
    pub(crate) chart: Vec<PathBuf>,
    /// An earlier record of the same limb (YAML), for changes of girth and weight; may be given several times.
    #[arg(long, value_name = "RECORD")]
    pub(crate) previous: Vec<PathBuf>,
    #[command(flatten)]
    pub(crate) rules: RuleArgs,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

/// `explain`.
#[derive(Debug, ClapArgs)]
pub(crate) struct Explain {
    /// The id as the report prints it, or: screening, hazards, alarms, bench-test. Without it, every id.
    pub(crate) id: Option<String>,
    /// Everything, as Markdown.
    #[arg(long, conflicts_with = "id")]
    pub(crate) all: bool,
    /// A thresholds file in place of the default set, or a shipped set by name: consensus, s2k.
    #[arg(long, value_name = "FILE|NAME")]
    pub(crate) thresholds: Option<PathBuf>,
    /// A pressure scheme file, beside the shipped ones; may be given several times.
    #[arg(long, value_name = "FILE")]
    pub(crate) schemes: Vec<PathBuf>,
    /// Write to a file instead of standard output; `-` is standard output.
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<PathBuf>,
    /// Replace an existing file.
    #[arg(long)]
    pub(crate) force: bool,
}

/// `gradient`.
#[derive(Debug, ClapArgs)]
#[command(group = clap::ArgGroup::new("what").required(true).args(["garment", "chart", "readings"]))]
#[command(
    after_help = "Examples:\n  tapeline gradient leg.yaml --garment stocking.yaml\n  tapeline gradient arm.yaml --chart sleeves.yaml --size 3\n  tapeline gradient arm.yaml --readings\n\nA garment needs relaxed girths, or flat widths (laid flat, half the girth), at the measured marks. With a fabric curve the figures are in mmHg; without one the fall is judged from stretch alone."
)]
pub(crate) struct Gradient {
    /// The measurement record (YAML); `-` is standard input.
    pub(crate) record: PathBuf,
    /// A garment, a wrap, or garments worn together (garment/1, wrap/1).
    #[arg(long, value_name = "FILE")]
    pub(crate) garment: Option<PathBuf>,
    /// A size chart, with --size.
    #[arg(long, value_name = "FILE", requires = "size")]
    pub(crate) chart: Option<PathBuf>,
    /// The size of the chart.
    #[arg(long, value_name = "LABEL", requires = "chart")]
    pub(crate) size: Option<String>,
    /// Judge by the record's sensor readings alone.
    #[arg(long)]
    pub(crate) readings: bool,
    /// With --readings: of which garment, as the record names it.
    #[arg(long, value_name = "LABEL", requires = "readings")]
    pub(crate) of: Option<String>,
    /// Write the fabric's curve, scaled to fit the readings, to a new fabric file.
    #[arg(long, value_name = "FILE", conflicts_with = "readings")]
    pub(crate) calibrate: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) rules: RuleArgs,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

/// `pattern`.
#[derive(Debug, ClapArgs)]
#[command(
    after_help = "Examples:\n  tapeline pattern leg.yaml --fabric knit.yaml --target class=2\n  tapeline pattern arm.yaml --fabric knit.yaml --target 27mmHg --fall-to 60%\n  tapeline pattern arm.yaml --fabric knit.yaml --target wrist=27,forearm=22,axilla=15\n\nThe garment written with --write is read back with `tapeline gradient RECORD --garment FILE`. A made-to-measure order is made and checked by a certified fitter."
)]
pub(crate) struct Pattern {
    /// The measurement record (YAML); `-` is standard input.
    pub(crate) record: PathBuf,
    /// The fabric (fabric/1).
    #[arg(long, value_name = "FILE")]
    pub(crate) fabric: PathBuf,
    /// The wanted pressure: `27mmHg` at the reference, `class=2`, or `wrist=27,forearm=22` in mmHg;
    /// what was prescribed otherwise.
    #[arg(long, value_name = "TARGET")]
    pub(crate) target: Option<String>,
    /// A straight fall to this share of the reference at the top, as `60%`; the scheme's limits otherwise.
    #[arg(long, value_name = "SHARE")]
    pub(crate) fall_to: Option<String>,
    /// The scheme of `class=`; that of the prescription otherwise.
    #[arg(long, value_name = "ID")]
    pub(crate) scheme: Option<String>,
    /// Layers of the fabric.
    #[arg(long, value_name = "COUNT", default_value_t = 1, value_parser = clap::value_parser!(u32).range(1..=10))]
    pub(crate) layers: u32,
    /// The garment's upper end, a landmark; the last measured one otherwise.
    #[arg(long, value_name = "LANDMARK")]
    pub(crate) to: Option<String>,
    /// The garment's label.
    #[arg(long, value_name = "TEXT", default_value = "made-to-measure pattern")]
    pub(crate) label: String,
    /// Write the garment (garment/1) to a file.
    #[arg(long, value_name = "FILE")]
    pub(crate) write: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) rules: RuleArgs,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

/// `fabric`.
#[derive(Debug, ClapArgs)]
#[command(
    after_help = "A bench test stands in a fabric file as\n  bench: {kind: strip, width: 5 cm, relaxed: 20 cm, pulls: [{weight: 200 g, length: [23.1 cm, 23.3 cm]}]}\nHang the weights in rising order, stretch the piece to the end and back five times first, and read each length while the weights come off. A strip hangs from one end (`strip`); a loop or tube over two bars (`loop`) carries the pull on both sides."
)]
pub(crate) struct FabricArgs {
    /// The fabric (fabric/1), with a curve or a bench test.
    pub(crate) file: PathBuf,
    /// Write the curve as a plain fabric file.
    #[arg(long, value_name = "FILE")]
    pub(crate) write: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) rules: RuleArgs,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

/// Where rules, schemes and the date come from.
#[derive(Debug, ClapArgs)]
pub(crate) struct RuleArgs {
    /// The day of the check, as 2026-03-14; the system date otherwise. It is printed.
    #[arg(long, value_name = "DATE", value_parser = date)]
    pub(crate) today: Option<Date>,
    /// A thresholds file in place of the default set, or a shipped set by name: consensus, s2k.
    #[arg(long, value_name = "FILE|NAME")]
    pub(crate) thresholds: Option<PathBuf>,
    /// A pressure scheme file, beside the shipped ones; may be given several times.
    #[arg(long, value_name = "FILE")]
    pub(crate) schemes: Vec<PathBuf>,
}

/// Where the report goes and in which form.
#[derive(Debug, ClapArgs)]
pub(crate) struct OutputArgs {
    /// The form of the report.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(crate) format: Format,
    /// Write the report to a file instead of standard output; `-` is standard output.
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<PathBuf>,
    /// Replace an existing file.
    #[arg(long)]
    pub(crate) force: bool,
}

/// Forms of a report.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Format {
    /// For reading in a terminal.
    Text,
    /// `tapeline.report/1`, for other programs.
    Json,
}

fn date(text: &str) -> Result<Date, String> {
    let shaped = text.len() == 10 && text.bytes().filter(|byte| *byte == b'-').count() == 2;
    if !shaped {
        return Err("write year-month-day, as 2026-03-14".to_owned());
    }
    text.parse().map_err(|_| "no such day; write year-month-day, as 2026-03-14".to_owned())
}
