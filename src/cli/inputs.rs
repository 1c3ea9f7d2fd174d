//! Owns the opening of the files that a command names; problems of all of them are told together.

use std::path::{Path, PathBuf};

use anyhow::anyhow;
use jiff::ZonedDateTime;
use jiff::civil::Date;
use tapeline::assessment::{OpenRecord, open_previous, open_record};
use tapeline::garment::{Chart, Schemes, open_chart};
use tapeline::input::{Problem, Source};
use tapeline::rules::{Rules, SHIPPED_RULES, read_rules, read_shipped_rules};

use super::args::RuleArgs;
use super::exit::Failure;

/// Rules, schemes and the date of a run.
pub(crate) struct Setting {
    /// The day of the check.
    pub(crate) today: Date,
    /// The rules.
    pub(crate) rules: Rules,
    /// The schemes.
    pub(crate) schemes: Schemes,
}

impl Setting {
    /// Reads what the arguments name.
    pub(crate) fn open(args: &RuleArgs) -> Result<Self, Failure> {
        let today = args.today.unwrap_or_else(|| ZonedDateTime::now().date());
        let rules = rules(args.thresholds.as_deref())?;
        let sources = args.schemes.iter().map(|path| Source::read(path)).collect::<Result<Vec<_>, _>>()?;
        Ok(Self { today, rules, schemes: Schemes::with_files(sources)? })
    }
}

/// The rules of `--thresholds`: the id of a shipped set, else a file, else the default set. A file
/// that bears a shipped id is named with its folder, as `./s2k`.
pub(crate) fn rules(named: Option<&Path>) -> Result<Rules, Failure> {
    let Some(path) = named else { return Ok(read_rules(None)?) };
    if let Some((id, _)) = SHIPPED_RULES.iter().find(|(id, _)| path.as_os_str() == *id) {
        return Ok(read_shipped_rules(id)?);
    }
    let source = Source::read(path).map_err(|mut problem| {
        if !path.exists() && path.components().count() == 1 && path.extension().is_none() {
            let ids: Vec<&str> = SHIPPED_RULES.iter().map(|(id, _)| *id).collect();
            problem.what =
                format!("there is no such file and no shipped set of that name; shipped: {}", ids.join(", "));
        }
        problem
    })?;
    Ok(read_rules(Some(source))?)
}

/// Refuses `-` for two files: standard input holds one.
fn once_from_stdin<'p>(paths: impl Iterator<Item = &'p Path>) -> Result<(), Failure> {
    if paths.filter(|path| path.as_os_str() == "-").count() > 1 {
        return Err(
            anyhow!("`-` stands for two files, but standard input holds one; name the other one").into()
        );
    }
    Ok(())
}

/// Opens a record, its charts and earlier records of the same limb.
pub(crate) fn open_with_previous(
    record: &Path,
    charts: &[PathBuf],
    previous: &[PathBuf],
    setting: &Setting,
) -> Result<(OpenRecord, Vec<Chart>), Failure> {
    once_from_stdin(std::iter::once(record).chain(charts.iter().chain(previous).map(PathBuf::as_path)))?;
    let mut problems: Vec<Problem> = Vec::new();
    let (mut opened, found) = match open(record, charts, setting) {
        Ok(opened) => (Some(opened), None),
        Err(failure) => (None, Some(failure)),
    };
    match found {
        Some(Failure::Input(found)) => problems.extend(found),
        Some(other) => return Err(other),
        None => {}
    }
    if let Some((open, _)) = &mut opened {
        for path in previous {
            let found = Source::read(path)
                .map_err(|problem| vec![problem])
                .and_then(|source| open_previous(source, &open.record));
            match found {
                Ok(earlier) => open.previous.push(earlier),
                Err(found) => problems.extend(found),
            }
        }
    }
    match opened {
        Some(opened) if problems.is_empty() => Ok(opened),
        _ => Err(problems.into()),
    }
}

/// Opens a record and its charts.
pub(crate) fn open(
    record: &Path,
    charts: &[PathBuf],
    setting: &Setting,
) -> Result<(OpenRecord, Vec<Chart>), Failure> {
    once_from_stdin(std::iter::once(record).chain(charts.iter().map(PathBuf::as_path)))?;
    let mut problems: Vec<Problem> = Vec::new();
    let open = Source::read(record)
        .map_err(|problem| vec![problem])
        .and_then(|source| open_record(source, &setting.rules, &setting.schemes))
        .map_err(|found| problems.extend(found))
        .ok();
    let mut opened = Vec::new();
    for chart in charts {
        let found = Source::read(chart)
            .map_err(|problem| vec![problem])
            .and_then(|source| open_chart(source, &setting.schemes));
        match found {
            Ok(chart) => {
                if let Some(problem) = open.as_ref().and_then(|open| chart.limb_problem(open.record.limb)) {
                    problems.push(problem);
                }
                opened.push(chart.chart);
            }
            Err(found) => problems.extend(found),
        }
    }
    match open {
        Some(open) if problems.is_empty() => Ok((open, opened)),
        _ => Err(problems.into()),
    }
}
