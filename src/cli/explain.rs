//! `tapeline explain`.

use anyhow::anyhow;
use tapeline::explain::{
    Catalogue, Matrix, alarms_text, bench_text, entry_text, hazards_text, index_text, markdown,
    screening_text,
};
use tapeline::garment::Schemes;
use tapeline::input::Source;

use super::args::{Explain, Format, OutputArgs};
use super::exit::{Exit, Failure};
use super::{inputs, output};

/// Runs the command.
pub(crate) fn run(args: &Explain) -> Result<Exit, Failure> {
    let rules = inputs::rules(args.thresholds.as_deref())?;
    let sources = args.schemes.iter().map(|path| Source::read(path)).collect::<Result<Vec<_>, _>>()?;
    let catalogue = Catalogue::of(&rules, &Schemes::with_files(sources)?);
    let text = match args.id.as_deref() {
        _ if args.all => markdown(&catalogue, &rules),
        None => index_text(&catalogue),
        Some("screening") => screening_text(&rules),
        Some("hazards") => hazards_text(&Matrix::shipped()?),
        Some("alarms") => alarms_text(),
        Some("bench-test") => bench_text(),
        Some(id) => {
            let found: Vec<String> = catalogue.find(id).into_iter().map(entry_text).collect();
            if found.is_empty() {
                let near = catalogue.nearest(id).map_or_else(
                    || "`tapeline explain` lists every id".to_owned(),
                    |near| format!("did you mean `{near}`?"),
                );
                return Err(anyhow!("there is nothing to explain by the name `{id}`; {near}").into());
            }
            found.join("\n")
        }
    };
    let to = OutputArgs { format: Format::Text, output: args.output.clone(), force: args.force };
    output::write(text.as_bytes(), &to)?;
    Ok(Exit::Fine)
}
