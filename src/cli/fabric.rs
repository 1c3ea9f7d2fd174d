//! `tapeline fabric`.

use tapeline::garment::{fabric_file, open_fabric};
use tapeline::input::Source;
use tapeline::render;
use tapeline::report::fabric_report;

use super::args::{FabricArgs, Format};
use super::exit::{Exit, Failure};
use super::inputs::Setting;
use super::output;

/// Runs the command.
pub(crate) fn run(args: &FabricArgs) -> Result<Exit, Failure> {
    let setting = Setting::open(&args.rules)?;
    let fabric = open_fabric(Source::read(&args.file)?)?;
    if let Some(path) = &args.write {
        output::write_file(fabric_file(&fabric).as_bytes(), path, args.output.force)?;
    }
    let report = fabric_report(&fabric, &setting.rules);
    let text = match args.output.format {
        Format::Json => render::fabric_json(&report),
        Format::Text => render::fabric_text(&report, output::columns()),
    };
    output::write(text.as_bytes(), &args.output)?;
    Ok(Exit::Fine)
}
