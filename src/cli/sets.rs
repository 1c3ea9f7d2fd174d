//! Owns the rules and schemes of a run.

use std::path::Path;

use tapeline::garment::Schemes;
use tapeline::input::{FileKind, Source};
use tapeline::rules::{Rules, SHIPPED_RULES, read_rules, read_shipped_rules};

use super::exit::Failure;
use super::options::Sets;

/// Reads what the options name; problems of all files are told together.
pub(crate) fn open(sets: &Sets) -> Result<(Rules, Schemes), Failure> {
    match (rules(sets.rules.as_deref()), schemes(sets)) {
        (Ok(rules), Ok(schemes)) => Ok((rules, schemes)),
        (Err(Failure::Input(mut problems)), Err(Failure::Input(more))) => {
            problems.extend(more);
            Err(problems.into())
        }
        (Err(failure), _) | (_, Err(failure)) => Err(failure),
    }
}

fn schemes(sets: &Sets) -> Result<Schemes, Failure> {
    let read = |path: &std::path::PathBuf| Source::read_as(path, FileKind::Scheme.spoken());
    let sources = sets.scheme_file.iter().map(read).collect::<Result<Vec<_>, _>>()?;
    Ok(Schemes::with_files(sources)?)
}

/// The rules of `--rules`: the id of a shipped set, else a file, else the default set. A file that bears a
/// shipped id is named with its folder, as `./default`.
fn rules(named: Option<&Path>) -> Result<Rules, Failure> {
    let Some(path) = named else { return Ok(read_rules(None)?) };
    if let Some((id, _)) = SHIPPED_RULES.iter().find(|(id, _)| path.as_os_str() == *id) {
        return Ok(read_shipped_rules(id)?);
    }
    let source = Source::read_as(path, FileKind::Rules.spoken()).map_err(|mut problem| {
        if !path.exists() && path.components().count() == 1 && path.extension().is_none() {
            let ids: Vec<&str> = SHIPPED_RULES.iter().map(|(id, _)| *id).collect();
            let near = tapeline::input::nearest_word(&path.display().to_string(), ids.iter().copied())
                .map_or(String::new(), |near| format!("; did you mean `{near}`?"));
            problem.what = format!(
                "there is no such file and no shipped set of that name; shipped: {}{near}",
                ids.join(", ")
            );
        }
        problem
    })?;
    Ok(read_rules(Some(source))?)
}
