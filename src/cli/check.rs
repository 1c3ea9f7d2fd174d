//! `tapeline check`.

use tapeline::assessment::assess;
use tapeline::render;
use tapeline::report::{Inputs, build};

use super::args::{Check, Format};
use super::exit::{Exit, Failure};
use super::inputs::{Setting, open_with_previous};
use super::output;

/// Runs the command.
pub(crate) fn run(args: &Check) -> Result<Exit, Failure> {
    let setting = Setting::open(&args.rules)?;
    let (record, charts) = open_with_previous(&args.record, &args.chart, &args.previous, &setting)?;
    let found = assess(&record, charts, setting.today, &setting.rules);
    let report = build(Inputs { open: &record, found: &found, rules: &setting.rules });
    let text = match args.output.format {
        Format::Json => render::json(&report),
        Format::Text => render::text(&report, output::columns()),
    };
    output::write(text.as_bytes(), &args.output)?;
    Ok(Exit::of_outcome(report.outcome))
}
