//! Owns the opening of a record with what goes with it: earlier visits, charts, what is worn.

use tapeline::garment::{OpenChart, OpenOutfit, Schemes, open_chart, open_outfit};
use tapeline::input::{FileKind, Problem, Reader, Source};
use tapeline::record::{Record, read_record};

use super::exit::Failure;
use super::files::{Files, What};

/// A record's file.
const RECORDS: [What; 2] = [What::Kind(FileKind::Record), What::VisitTable];
/// A chart's file.
const CHARTS: [What; 2] = [What::Kind(FileKind::Chart), What::SizeTable];
/// A file of what is worn.
const WORN: [What; 2] = [What::Kind(FileKind::Garment), What::Kind(FileKind::Wrap)];

/// The kinds of files that go with a record.
pub(crate) const RECORD_KINDS: [What; 2] = [What::Kind(FileKind::Record), What::Kind(FileKind::Visits)];
/// The kinds of files that `check` and `sheet` take.
pub(crate) const CHECK_KINDS: [What; 6] = [
    What::Kind(FileKind::Record),
    What::Kind(FileKind::Visits),
    What::Kind(FileKind::Chart),
    What::SizeTable,
    What::Kind(FileKind::Garment),
    What::Kind(FileKind::Wrap),
];

/// A record with what goes with it.
pub(crate) struct Case {
    /// The newest visit.
    pub(crate) record: Record,
    /// Earlier visits, newest first.
    pub(crate) earlier: Vec<Record>,
    /// The charts, in the order given.
    pub(crate) charts: Vec<OpenChart>,
    /// What is worn, in the order given.
    pub(crate) worn: Vec<OpenOutfit>,
}

struct Visit {
    record: Record,
    reader: Reader,
}

impl Case {
    /// Opens the files; problems of all of them are told together.
    pub(crate) fn open(files: Files, schemes: &Schemes) -> Result<Self, Failure> {
        let mut problems: Vec<Problem> = Vec::new();
        let mut visits = Vec::new();
        for source in files.of(&RECORDS).cloned() {
            match visit(source) {
                Ok(one) => visits.push(one),
                Err(found) => problems.extend(found),
            }
        }
        let charts: Vec<OpenChart> = files
            .of(&CHARTS)
            .cloned()
            .filter_map(|source| open_chart(source, schemes).map_err(|found| problems.extend(found)).ok())
            .collect();
        let worn: Vec<OpenOutfit> = files
            .of(&WORN)
            .cloned()
            .filter_map(|source| open_outfit(source, schemes).map_err(|found| problems.extend(found)).ok())
            .collect();
        if visits.is_empty() && problems.is_empty() {
            return Err(anyhow::anyhow!(
                "no record is named; a record starts with `tapeline: record/1`, and `tapeline new record` writes one"
            )
            .into());
        }
        visits.sort_by(|one: &Visit, other| {
            let day = |visit: &Visit| (visit.record.measured_on, visit.record.measured_at);
            day(other).cmp(&day(one))
        });
        problems.extend(unlike(&visits));
        if let Some(newest) = visits.first() {
            let limb = newest.record.limb;
            problems.extend(charts.iter().filter_map(|one| one.limb_problem(limb)));
            problems.extend(worn.iter().filter_map(|one| one.limb_problem(limb)));
        }
        let mut records = visits.into_iter().map(|visit| visit.record);
        match records.next() {
            Some(record) if problems.is_empty() => {
                Ok(Self { record, earlier: records.collect(), charts, worn })
            }
            _ => Err(problems.into()),
        }
    }
}

fn visit(source: Source) -> Result<Visit, Vec<Problem>> {
    let reader = Reader::new(source).map_err(|problem| vec![problem])?;
    let record = read_record(&reader);
    let problems = reader.problems();
    match record {
        Some(record) if problems.is_empty() => Ok(Visit { record, reader }),
        _ => Err(problems),
    }
}

/// Visits that are not of the newest visit's client, limb and side, and two of one moment.
fn unlike(visits: &[Visit]) -> Vec<Problem> {
    let Some(newest) = visits.first() else { return Vec::new() };
    let mut problems = Vec::new();
    for (number, one) in visits.iter().enumerate().skip(1) {
        let (record, first) = (&one.record, &newest.record);
        if record.client != first.client {
            let what = format!(
                "is `{}`, but {} is of `{}`; visits are of one client",
                record.client, first.file, first.client
            );
            problems.push(one.reader.problem_at(record.spots.client, "client", what));
            continue;
        }
        let measured: Vec<String> = limbs(record);
        if measured.iter().all(|limb| !limbs(first).contains(limb)) {
            let what = format!(
                "measures the {}, but {} measures the {}; visits are of one limb",
                measured.join(" and the "),
                first.file,
                limbs(first).join(" and the ")
            );
            problems.push(one.reader.problem_at(record.spots.limb, "limb", what));
        }
        let same = visits.iter().take(number).find(|other| {
            other.record.measured_on == record.measured_on && other.record.measured_at == record.measured_at
        });
        if let Some(other) = same {
            let what = format!(
                "is the day of {} too; add the time, as `measured_on: 2026-03-14T09:30`, or leave one out",
                other.record.file
            );
            problems.push(one.reader.problem_at(record.spots.measured_on, "measured_on", what));
        }
    }
    problems
}

/// The limbs that a record is of: `left arm`.
fn limbs(record: &Record) -> Vec<String> {
    record.limbs.iter().map(|limb| format!("{} {}", limb.side.name(), record.limb.name())).collect()
}
