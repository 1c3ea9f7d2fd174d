//! `tapeline gradient`: one garment in depth.

use std::path::PathBuf;

use anyhow::anyhow;
use clap::Args;
use tapeline::assessment::{AskedGarment, Assessment, NoGarment, assess_one};
use tapeline::estimate::{NoCalibration, calibrate};
use tapeline::garment::fabric_file;
use tapeline::report::build;
use tapeline::rules::Severity;
use tapeline::words;

use super::exit::{Exit, Failure};
use super::options::{Day, Form, Place, Sets, Tables};
use super::session::{EVERYTHING, Session};
use super::writer;

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline gradient leg.yaml stocking.yaml
  tapeline gradient arm.yaml sleeve-chart.yaml --size 3
  tapeline gradient arm.yaml --readings

A garment needs relaxed girths, or flat widths (laid flat, half the girth), at the measured marks. With a
fabric curve the figures are in mmHg; without one the fall is judged from stretch alone.";

/// `gradient`.
#[derive(Debug, Args)]
pub(crate) struct Gradient {
    /// A record, and a garment, a wrap or a size chart, in any order; `-` is standard input
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    /// The size of the chart
    #[arg(long, value_name = "LABEL")]
    size: Option<String>,
    /// Judge by the record's sensor readings alone
    #[arg(long, conflicts_with = "size")]
    readings: bool,
    /// With --readings: of which garment, as the record names it
    #[arg(long, value_name = "LABEL", requires = "readings")]
    of: Option<String>,
    /// Write the fabric's curve, scaled to fit the readings, to a fabric file
    #[arg(long, value_name = "FILE", conflicts_with = "readings")]
    fabric_out: Option<PathBuf>,
    #[command(flatten)]
    day: Day,
    #[command(flatten)]
    tables: Tables,
    #[command(flatten)]
    sets: Sets,
    #[command(flatten)]
    form: Form,
    #[command(flatten)]
    place: Place,
}

/// Runs the command.
pub(crate) fn run(args: &Gradient) -> Result<Exit, Failure> {
    let session =
        Session::open(&args.files, &args.day, &args.sets, Some(&args.tables), "gradient", &EVERYTHING)?;
    let asked = match (&args.size, args.readings) {
        (Some(size), _) => AskedGarment::Size(size.clone()),
        (None, true) => AskedGarment::Readings(args.of.clone()),
        (None, false) => AskedGarment::Files,
    };
    let found = assess_one(&session.opened, &asked, &session.setting).map_err(|why| anyhow!(said(&why)))?;
    if let Some(path) = &args.fabric_out {
        writer::write(calibrated(&found)?.as_bytes(), path, args.place.force)?;
    }
    let report = build(&found);
    args.place.write(&super::text_of(&report, args.form.format)?)?;
    if report.decision.outcome.is_some() {
        return Ok(Exit::of_outcome(report.decision.outcome));
    }
    let open = found.garments.iter().any(|one| one.estimated.judged() == Some(false));
    let faulty = found.findings.iter().any(|one| one.place.garment && one.severity <= Severity::Caution);
    Ok(Exit::of_faults(open || faulty))
}

/// Why there is nothing to look at, with what would be accepted.
fn said(why: &NoGarment) -> String {
    let list = |all: &[String]| words::list(all);
    match why {
        NoGarment::NoRecord => "no record is named; a record starts with `tapeline: record/1`".to_owned(),
        NoGarment::Nothing => {
            "no garment is named; give a garment file, a chart with `--size`, or `--readings`".to_owned()
        }
        NoGarment::NoSize(sizes) => {
            format!("say which size of the chart with `--size`; it has {}", list(sizes))
        }
        NoGarment::SeveralCharts => "`--size` is of one chart; give one only".to_owned(),
        NoGarment::UnknownSize(sizes) => format!("the chart has no such size; it has {}", list(sizes)),
        NoGarment::NoReadings(names) if names.is_empty() => "the record holds no readings".to_owned(),
        NoGarment::NoReadings(names) => {
            format!("no readings are of that garment; there are those of {}", list(names))
        }
        NoGarment::SeveralReadings(names) => {
            format!("the readings are of several garments; say which with `--of`: {}", list(names))
        }
    }
}

/// The fabric's curve, scaled to fit the readings, as a fabric file.
fn calibrated(found: &Assessment) -> Result<String, Failure> {
    let garment = found.garments.first().ok_or_else(|| anyhow!("no garment is there to calibrate"))?;
    let fabric = garment
        .outfit
        .garments()
        .find_map(|one| one.fabric.as_ref())
        .filter(|one| one.has_curve())
        .ok_or_else(|| anyhow!("the garment names no fabric with a curve, so there is nothing to scale"))?;
    let rows = garment.estimated.readings.as_ref().map(|one| one.against.as_slice()).unwrap_or_default();
    match calibrate(rows) {
        Ok(scale) => {
            let note = format!(
                "the curve of {} times {}, to fit readings at {}",
                fabric.label,
                words::decimal(scale.factor, 3),
                words::counted(scale.marks, "mark", "marks")
            );
            Ok(fabric_file(&fabric.calibrated(scale.factor, scale.sd, &note)))
        }
        Err(NoCalibration::NoMarks) => {
            Err(anyhow!("no mark has both a reading and an estimate, so no curve is written").into())
        }
        Err(NoCalibration::Misfit { chance, .. }) => Err(anyhow!(
            "the readings do not fit one factor on the curve (chance of such a misfit {}), so no curve is written; look at the readings and the relaxed girths again",
            words::chance(chance)
        )
        .into()),
    }
}
