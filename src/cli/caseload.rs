//! Owns the opening of what `batch` and `cover` take: a table of limbs, and charts, in any order.

use std::num::NonZeroUsize;
use std::path::{Path, PathBuf};

use anyhow::anyhow;
use tapeline::caseload::{LimbColumns, Prepared};
use tapeline::estimate::EstimateRules;
use tapeline::garment::{Chart, open_chart, printed_labels};
use tapeline::input::{FileKind, Problem, RowBlocks, no_plain_file};
use tapeline::rules::Rules;
use tapeline::sizing::parts;

use super::exit::Failure;
use super::files::{Files, What};
use super::options::{Sets, Tables};
use super::{say, sets};

/// A table of limbs with the charts that it is held against.
pub(crate) struct Opened {
    /// The table, at its first row.
    pub(crate) blocks: RowBlocks,
    /// Its columns.
    pub(crate) columns: LimbColumns,
    /// The charts with their printed labels.
    pub(crate) charts: Vec<(String, Prepared)>,
    /// The rules.
    pub(crate) rules: Rules,
    /// The numbers of the estimate.
    pub(crate) estimate: EstimateRules,
    /// Bytes of the table, where they are known.
    pub(crate) bytes: Option<u64>,
}

/// Opens the files of a command; says which columns are not used.
pub(crate) fn open(
    command: &str,
    paths: &[PathBuf],
    tables: &Tables,
    options: &Sets,
) -> Result<Opened, Failure> {
    let (rules, schemes) = sets::open(options)?;
    let (limbs, others) = split(paths)?;
    let accepted = [What::Kind(FileKind::Chart), What::SizeTable];
    let files = Files::read(&others, Some(tables), command, &accepted)?;
    let mut charts: Vec<Chart> = Vec::new();
    let mut problems: Vec<Problem> = Vec::new();
    for given in files.all() {
        match open_chart(given.source.clone(), &schemes) {
            Ok(open) => charts.push(open.chart),
            Err(found) => problems.extend(found),
        }
    }
    if !problems.is_empty() {
        return Err(problems.into());
    }
    let Some(first) = charts.first() else {
        return Err(anyhow!("`{command}` needs a table of limbs and at least one size chart").into());
    };
    let limb = first.limb;
    if let Some(other) = charts.iter().find(|chart| chart.limb != limb) {
        let what = format!("is for the {}, {} for the {}", other.limb.name(), first.label, limb.name());
        return Err(Problem::of_file(&other.file, what).into());
    }
    let all: Vec<&Chart> = charts.iter().collect();
    if parts(&all).iter().any(|part| *part > 0) {
        return Err(anyhow!(
            "the charts are parts of a set that are worn together; run `{command}` for the charts of each part"
        )
        .into());
    }
    let estimate = EstimateRules::of(&rules);
    let charts = printed_labels(&all)
        .into_iter()
        .zip(&charts)
        .map(|(label, chart)| (label, Prepared::of(chart, &rules)))
        .collect();
    let blocks = RowBlocks::open(&limbs)?;
    let columns = LimbColumns::of(&blocks, limb, tables.decimal_comma)?;
    if !columns.unused.is_empty() {
        say::note(&format!("columns that are not used: {}", columns.unused.join(", ")));
    }
    let bytes = std::fs::metadata(&limbs).ok().filter(std::fs::Metadata::is_file).map(|about| about.len());
    Ok(Opened { blocks, columns, charts, rules, estimate, bytes })
}

/// How many workers: as asked for, else one for each core.
pub(crate) fn workers(asked: Option<NonZeroUsize>) -> usize {
    asked.or_else(|| std::thread::available_parallelism().ok()).map_or(1, NonZeroUsize::get)
}

/// The table of limbs among the files, and the others: standard input, else the first table without a
/// column `size`.
fn split(paths: &[PathBuf]) -> Result<(PathBuf, Vec<PathBuf>), Failure> {
    let is_limbs = |path: &Path| {
        if path.as_os_str() == "-" {
            return true;
        }
        let ending = path.extension().and_then(|ext| ext.to_str()).unwrap_or_default().to_ascii_lowercase();
        if ending == "yaml" || ending == "yml" {
            return false;
        }
        let header = RowBlocks::open(path).map(|blocks| blocks.header().to_vec());
        header.is_ok_and(|header| !header.iter().any(|name| name.eq_ignore_ascii_case("size")))
    };
    if let Some(problem) =
        paths.iter().find_map(|path| no_plain_file(path, "a table of limbs or a size chart"))
    {
        return Err(problem.into());
    }
    let Some(at) = paths.iter().position(|path| is_limbs(path)) else {
        return Err(
            anyhow!("no table of limbs is named; it has columns such as `id,wrist_cm,forearm_cm`").into()
        );
    };
    let others = paths.iter().enumerate().filter(|(number, _)| *number != at).map(|(_, path)| path.clone());
    Ok((paths.get(at).cloned().unwrap_or_default(), others.collect()))
}
