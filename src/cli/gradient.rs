//! `tapeline gradient`: one garment in depth.

use std::path::{Path, PathBuf};

use anyhow::anyhow;
use clap::Args;
use tapeline::assessment::{Assessment, Opened};
use tapeline::estimate::{NoCalibration, calibrate};
use tapeline::garment::{Chart, Garment, Outfit, Piece, fabric_file};
use tapeline::input::{Text, nearest_word};
use tapeline::report::build;
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
    let mut session =
        Session::open(&args.files, &args.day, &args.sets, Some(&args.tables), "gradient", &EVERYTHING)?;
    let outfits = asked(args, &session.opened)?;
    session.opened.outfits = outfits;
    session.opened.charts.clear();
    let found = session.assess()?;
    if let Some(path) = &args.fabric_out {
        calibrated(&found, path, args.place.force)?;
    }
    let report = build(&found);
    args.place.write(&super::text_of(&report, args.form.format)?)?;
    Ok(Exit::of_outcome(report.decision.outcome))
}

/// What is asked about: garments and wraps named, one size of a chart, or the readings alone.
fn asked(args: &Gradient, opened: &Opened) -> anyhow::Result<Vec<Outfit>> {
    if args.readings {
        return Ok(vec![of_readings(opened, args.of.as_deref())?]);
    }
    match (opened.charts.as_slice(), opened.outfits.as_slice()) {
        ([], []) => Err(anyhow!(
            "nothing to judge: name a garment, a wrap or a size chart beside the record, or say `--readings`"
        )),
        ([], outfits) if args.size.is_none() => Ok(outfits.to_vec()),
        ([], _) => Err(anyhow!("`--size` names a size of a chart, but no chart is named")),
        ([chart], []) => Ok(vec![of_chart(chart, args.size.as_deref())?]),
        (_, []) => Err(anyhow!("two charts are named; `gradient` looks at one size of one chart")),
        _ => Err(anyhow!("a chart and a garment are named; `gradient` looks at one of them")),
    }
}

/// One size of a chart.
fn of_chart(chart: &Chart, size: Option<&str>) -> anyhow::Result<Outfit> {
    let labels: Vec<&str> = chart.sizes.iter().map(|size| size.label.as_str()).collect();
    let listed = words::list(&labels.iter().map(|label| format!("`{label}`")).collect::<Vec<_>>());
    let place = match size {
        Some(label) => chart.size_of(label).ok_or_else(|| {
            let near = nearest_word(label, labels.iter().copied());
            let near = near.map_or(String::new(), |near| format!("; did you mean `{near}`?"));
            anyhow!("`{label}` is no size of {}; its sizes: {listed}{near}", chart.label)
        })?,
        None if chart.sizes.len() == 1 => 0,
        None => return Err(anyhow!("which size of {}? add `--size`, one of {listed}", chart.label)),
    };
    let garment = chart.garment(place).ok_or_else(|| anyhow!("the chart has no such size"))?;
    Ok(Outfit::of(Piece::Garment(Box::new(garment))))
}

/// The readings alone: a garment of which nothing is known but its readings.
fn of_readings(opened: &Opened, of: Option<&str>) -> anyhow::Result<Outfit> {
    let record = opened.record().ok_or_else(|| anyhow!("no record is named"))?;
    let readings: Vec<_> = record.limbs.iter().flat_map(|limb| &limb.readings).collect();
    let mut names: Vec<&str> =
        readings.iter().filter_map(|one| one.garment.as_ref()).map(|one| one.text.as_str()).collect();
    names.sort_unstable();
    names.dedup();
    let listed = words::list(&names.iter().map(|name| format!("`{name}`")).collect::<Vec<_>>());
    let label = match (of, names.as_slice()) {
        _ if readings.is_empty() => {
            return Err(anyhow!(
                "the record holds no readings; add them, as `readings: [{{landmark: wrist, pressure: 24 mmHg, posture: supine, minutes_worn: 20}}]`"
            ));
        }
        (Some(of), names) if !names.contains(&of) => {
            return Err(anyhow!("no reading names the garment `{of}`; named: {listed}"));
        }
        (Some(of), _) => of,
        (None, []) => "garment worn",
        (None, [one]) => one,
        (None, _) => {
            return Err(anyhow!("the readings are of several garments, {listed}; name one with `--of`"));
        }
    };
    let places = || readings.iter().map(|one| one.landmark);
    let reference = record.limb.reference();
    Ok(Outfit::of(Piece::Garment(Box::new(Garment {
        label: Text::new(label).map_err(|fault| anyhow!("the garment's label {fault}"))?,
        file: record.file.clone(),
        limb: record.limb,
        style: None,
        from: places().min().unwrap_or(reference),
        to: places().max().unwrap_or(reference),
        claim: None,
        materials: None,
        hand_part: None,
        fabric: None,
        fabric_at: Vec::new(),
        layers: 1,
        relaxed: Vec::new(),
        top_edge: None,
    }))))
}

/// Writes the fabric's curve, scaled to the readings.
fn calibrated(found: &Assessment, path: &Path, force: bool) -> anyhow::Result<()> {
    let garment = found.garments.first().ok_or_else(|| anyhow!("no garment is named"))?;
    let fabrics = garment.outfit.fabrics();
    let [fabric] = fabrics.as_slice() else {
        return Err(anyhow!("a garment of one fabric with a curve is needed to scale it"));
    };
    let rows = garment.estimated.readings.as_ref().map_or(&[][..], |readings| readings.against.as_slice());
    let scale = calibrate(rows).map_err(|why| match why {
        NoCalibration::NoMarks => {
            anyhow!("nothing to scale by: at least one mark with both an estimate and a reading is needed")
        }
        NoCalibration::Misfit { chance, .. } => anyhow!(
            "the readings do not fit one scale (so great a misfit has a chance of {}); no curve is written. Measure again, or look for a mark that was misread",
            words::chance(chance)
        ),
    })?;
    let note = format!(
        "curve of {} times {}, SD {}, by {}",
        fabric.label,
        words::trimmed(scale.factor, 4),
        words::trimmed(scale.sd, 4),
        words::counted(scale.marks, "mark read under the garment", "marks read under the garment"),
    );
    writer::write(fabric_file(&fabric.calibrated(scale.factor, scale.sd, &note)).as_bytes(), path, force)
}
