//! `tapeline gradient`.

use std::path::Path;

use anyhow::anyhow;
use tapeline::assessment::{Asked, GradientAssessment, OpenRecord, assess_gradient};
use tapeline::garment::{Chart, Garment, Outfit, Piece, fabric_file, open_outfit};
use tapeline::input::Source;
use tapeline::render;
use tapeline::report::build_gradient;

use super::args::{Format, Gradient};
use super::exit::{Exit, Failure};
use super::inputs::{Setting, open};
use super::output;

/// Runs the command.
pub(crate) fn run(args: &Gradient) -> Result<Exit, Failure> {
    let setting = Setting::open(&args.rules)?;
    let (record, asked) = opened(args, &setting)?;
    let found = assess_gradient(&record, asked, setting.today, &setting.rules);
    if let Some(path) = &args.calibrate {
        calibrate(&found, path, args.output.force)?;
    }
    let report = build_gradient(&record, &found, &setting.rules);
    let text = match args.output.format {
        Format::Json => render::json(&report),
        Format::Text => render::gradient_text(&report, output::columns()),
    };
    output::write(text.as_bytes(), &args.output)?;
    Ok(Exit::of_outcome(report.outcome))
}

/// The record, and what is asked about; problems of both files are told together.
fn opened(args: &Gradient, setting: &Setting) -> Result<(OpenRecord, Asked), Failure> {
    if let Some(path) = &args.garment {
        let outfit = Source::read(path)
            .map_err(|problem| vec![problem])
            .and_then(|source| open_outfit(source, &setting.schemes));
        let record = open(&args.record, &[], setting);
        let (record, outfit) = match (record, outfit) {
            (Ok((record, _)), Ok(outfit)) => (record, outfit),
            (Err(Failure::Input(mut problems)), Err(more)) => {
                problems.extend(more);
                return Err(problems.into());
            }
            (Err(failure), _) => return Err(failure),
            (_, Err(problems)) => return Err(problems.into()),
        };
        if let Some(problem) = outfit.limb_problem(record.record.limb) {
            return Err(problem.into());
        }
        let outfit = outfit.outfit;
        let asked = Asked {
            label: outfit.label.clone(),
            size: None,
            hand_part: outfit.hand_part(),
            outfit: Some(outfit),
        };
        return Ok((record, asked));
    }
    let charts: Vec<_> = args.chart.iter().cloned().collect();
    let (record, charts) = open(&args.record, &charts, setting)?;
    let asked = match (charts.into_iter().next(), &args.size) {
        (Some(chart), Some(size)) => of_chart(chart, size)?,
        _ => of_readings(&record, args.of.as_deref())?,
    };
    Ok((record, asked))
}

/// One size of a chart.
fn of_chart(chart: Chart, label: &str) -> Result<Asked, Failure> {
    let Some(size) = chart.sizes.iter().find(|size| size.label == label) else {
        let labels: Vec<String> = chart.sizes.iter().map(|size| format!("`{}`", size.label)).collect();
        return Err(
            anyhow!("`{label}` is no size of {}; its sizes: {}", chart.label, labels.join(", ")).into()
        );
    };
    let first = size.relaxed.first().map_or(chart.limb.reference(), |(landmark, _)| *landmark);
    let garment = Garment {
        label: chart.label.clone(),
        limb: chart.limb,
        style: chart.style,
        from: chart.from.unwrap_or(first),
        to: chart.to,
        claim: chart.claim,
        contains: chart.contains,
        hand_part: chart.hand_part,
        fabric: chart.fabric,
        fabric_at: Vec::new(),
        layers: chart.layers,
        relaxed: size.relaxed.clone(),
        top_edge: None,
    };
    Ok(Asked {
        label: chart.label,
        size: Some(label.to_owned()),
        hand_part: chart.hand_part,
        outfit: Some(Outfit::of(Piece::Garment(Box::new(garment)))),
    })
}

/// The readings alone.
fn of_readings(record: &OpenRecord, of: Option<&str>) -> Result<Asked, Failure> {
    let readings = &record.record.readings;
    let mut names: Vec<&str> = readings.iter().filter_map(|one| one.garment.as_deref()).collect();
    names.sort_unstable();
    names.dedup();
    let listed = names.iter().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ");
    let label = match (of, names.as_slice()) {
        _ if readings.is_empty() => {
            return Err(anyhow!(
                "the record holds no readings; add them, as `readings: [{{landmark: wrist, pressure: 24 mmHg, posture: supine, minutes_worn: 20}}]`"
            )
            .into());
        }
        (Some(of), _) if !names.contains(&of) => {
            return Err(anyhow!("no reading names the garment `{of}`; named: {listed}").into());
        }
        (Some(of), _) => of,
        (None, []) => "garment worn",
        (None, [one]) => one,
        (None, _) => {
            return Err(
                anyhow!("the readings are of several garments ({listed}); name one with `--of`").into()
            );
        }
    };
    Ok(Asked { label: label.to_owned(), size: None, outfit: None, hand_part: None })
}

/// Writes the fabric's curve, scaled to the readings.
fn calibrate(found: &GradientAssessment, path: &Path, force: bool) -> Result<(), Failure> {
    let fabrics = found.asked.outfit.as_ref().map(Outfit::fabrics).unwrap_or_default();
    let scale = found.against.as_ref().and_then(|against| Some((against.scale?, against.rows.len())));
    let ([fabric], Some((scale, count))) = (fabrics.as_slice(), scale) else {
        return Err(anyhow!(
            "nothing to calibrate: one fabric curve and at least one mark with both an estimate and a reading are needed"
        )
        .into());
    };
    let note = format!(
        "curve of {} times {:.4}, SD {:.4}, calibrated with {count} marks read under the garment",
        fabric.label, scale.factor, scale.sd
    );
    let text = fabric_file(&fabric.calibrated(scale.factor, scale.sd, note));
    output::write_file(text.as_bytes(), path, force)?;
    Ok(())
}
