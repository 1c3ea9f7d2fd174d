//! Owns the opening of the files that a command names; problems of all of them are told together.

use std::path::{Path, PathBuf};

use jiff::ZonedDateTime;
use jiff::civil::Date;
use tapeline::assessment::{OpenRecord, open_record};
use tapeline::garment::{Chart, Schemes, open_chart};
use tapeline::input::{Problem, Source};
use tapeline::rules::{Rules, read_rules};

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
        let thresholds = args.thresholds.as_deref().map(Source::read).transpose()?;
        let rules = read_rules(thresholds)?;
        let sources = args.schemes.iter().map(|path| Source::read(path)).collect::<Result<Vec<_>, _>>()?;
        Ok(Self { today, rules, schemes: Schemes::with_files(sources)? })
    }
}

/// Opens a record and its charts.
pub(crate) fn open(
    record: &Path,
    charts: &[PathBuf],
    setting: &Setting,
) -> Result<(OpenRecord, Vec<Chart>), Failure> {
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
