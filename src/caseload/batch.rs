//! Owns the run over a table of limbs: one row out for each row in, in its order.

use super::case::Case;
use super::field::{FIELD_NAMES, Field};
use super::form::{BatchForm, RowWriter, csv_text, json_text};
use super::limb_columns::LimbColumns;
use super::prepared::{CasePressure, Prepared, Scratch};
use super::sized::Sized;
use crate::anatomy::Landmark;
use crate::estimate::Estimated;
use crate::finding;
use crate::garment::Chart;
use crate::gradient::Grade;
use crate::input::{RowBlock, RowCells};
use crate::sizing::{ChartVerdict, LengthFit, SameAgain};

/// Levels below or above which a finding is named.
#[derive(Clone, Copy, Debug)]
pub struct BatchLevels {
    /// Chance of lying inside below which it is said.
    pub inside_chance: f64,
    /// Chance of the same size again below which it is said.
    pub same_again: f64,
    /// Pressure above which a mark is cleared first, mmHg.
    pub pressure: f64,
}

/// A batch, ready to run.
#[derive(Clone, Debug)]
pub struct Batch {
    charts: Vec<(String, Prepared)>,
    columns: LimbColumns,
    fields: Vec<Field>,
    keys: Vec<Vec<u8>>,
    form: BatchForm,
    levels: BatchLevels,
    needs_fall: bool,
    needs_again: bool,
}

/// What one worker uses again for each row.
#[derive(Debug, Default)]
pub struct Worker {
    pub(super) cells: RowCells,
    pub(super) case: Case,
    pub(super) scratch: Scratch,
}

/// A block of rows, done.
#[derive(Debug)]
pub struct BlockDone {
    /// Its number.
    pub number: u64,
    /// Its rows as they are written.
    pub out: Vec<u8>,
    /// How many rows.
    pub rows: u64,
    /// How many of them have a problem.
    pub problems: u64,
    /// Bytes of the table read so far.
    pub read: u64,
}

/// One row, worked out.
struct RowDone<'b> {
    label: &'b str,
    prepared: &'b Prepared,
    sized: Sized,
    pressures: Vec<CasePressure>,
    again: Option<SameAgain>,
    estimated: Option<Estimated>,
    length: LengthFit,
}

impl Batch {
    /// Prepares a batch: charts with their printed labels, and the columns asked for by name (`None` = all).
    ///
    /// # Errors
    /// What is wrong with the columns asked for.
    pub fn of(
        charts: Vec<(String, Prepared)>,
        columns: LimbColumns,
        asked: Option<&[String]>,
        form: BatchForm,
        levels: BatchLevels,
    ) -> Result<Self, String> {
        let mut marks: Vec<Landmark> =
            charts.iter().flat_map(|(_, prepared)| prepared.marks.iter().copied()).collect();
        marks.sort_unstable();
        marks.dedup();
        let all: Vec<String> = FIELD_NAMES.iter().map(|name| (*name).to_owned()).collect();
        let mut fields = Vec::new();
        for name in asked.unwrap_or(&all) {
            let found = Field::named(name, &marks).ok_or_else(|| {
                format!("`{name}` is no column of a batch; there are {}", FIELD_NAMES.join(", "))
            })?;
            fields.extend(found.into_iter().filter(|field| !fields.contains(field)).collect::<Vec<_>>());
        }
        if fields.is_empty() {
            return Err("no column is asked for".to_owned());
        }
        let keys = fields.iter().map(|field| {
            let mut key = Vec::new();
            json_text(&mut key, &field.heading());
            key.push(b':');
            key
        });
        Ok(Self {
            keys: keys.collect(),
            needs_fall: fields.iter().any(|field| field.needs_fall()),
            needs_again: fields.iter().any(|field| field.needs_again()),
            charts,
            columns,
            fields,
            form,
            levels,
        })
    }

    /// What stands before the first row: the header of a CSV.
    pub fn head(&self) -> Vec<u8> {
        let mut out = Vec::new();
        if self.form == BatchForm::Csv {
            for (at, field) in self.fields.iter().enumerate() {
                if at > 0 {
                    out.push(b',');
                }
                csv_text(&mut out, &field.heading());
            }
            out.push(b'\n');
        }
        out
    }

    /// Works out a block of rows.
    pub fn run(&self, block: &RowBlock, worker: &mut Worker) -> BlockDone {
        let mut out = Vec::with_capacity(block.text.len() * 4);
        let (mut rows, mut problems, mut number) = (0, 0, block.first_row);
        for row in RowCells::rows(&block.text) {
            if !row.iter().all(u8::is_ascii_whitespace) {
                worker.cells.split(row, self.columns.sign);
                rows += 1;
                problems += u64::from(!self.row(number, worker, &mut out));
            }
            number += 1;
        }
        BlockDone { number: block.number, out, rows, problems, read: block.read }
    }

    /// Writes one row; false where it has a problem.
    fn row(&self, number: u64, worker: &mut Worker, out: &mut Vec<u8>) -> bool {
        let Worker { cells, case, scratch } = worker;
        let read = case.read(cells, &self.columns);
        let code = self.columns.code.and_then(|at| cells.get(at)).map(String::from_utf8_lossy);
        let code = code.filter(|code| !code.is_empty());
        let mut writer = RowWriter::begin(self.form, out, &self.keys);
        let done = match &read {
            Ok(()) => self.best(case, scratch),
            Err(_) => None,
        };
        for field in &self.fields {
            match field {
                Field::Id => match &code {
                    Some(code) => writer.text(Some(code)),
                    None => writer.text(Some(&number.to_string())),
                },
                Field::Problem => match &read {
                    Ok(()) => writer.empty(),
                    Err(what) => writer.text(Some(&format!("row {number}: {what}"))),
                },
                field => match &done {
                    Some(done) => self.cell(*field, done, &mut writer),
                    None => writer.empty(),
                },
            }
        }
        writer.end();
        read.is_ok()
    }

    /// The case against the chart that serves it best: a size before a pair between, before a girth to measure
    /// again, before made to measure, before not judged; then the greater least margin, then the first.
    fn best(&self, case: &Case, scratch: &mut Scratch) -> Option<RowDone<'_>> {
        let rank = |sized: &Sized| {
            let order = match sized.verdict {
                ChartVerdict::Size => 0,
                ChartVerdict::Between => 1,
                ChartVerdict::MeasureAgain => 2,
                ChartVerdict::MadeToMeasure => 3,
                ChartVerdict::NotJudged => 4,
            };
            (order, sized.margin.map_or(i64::MAX, |(margin, _)| -margin))
        };
        let mut best: Option<(&str, &Prepared, Sized)> = None;
        for (label, prepared) in &self.charts {
            let sized = prepared.size(case, scratch);
            if best.as_ref().is_none_or(|(_, _, held)| rank(&sized) < rank(held)) {
                best = Some((label, prepared, sized));
            }
        }
        let (label, prepared, sized) = best?;
        let picked = sized.size;
        Some(RowDone {
            label,
            prepared,
            sized,
            pressures: picked.map_or_else(Vec::new, |size| prepared.pressures(size, case).collect()),
            again: picked
                .filter(|_| self.needs_again && sized.verdict == ChartVerdict::Size)
                .and_then(|size| prepared.same_again(size, case)),
            estimated: picked.filter(|_| self.needs_fall).and_then(|size| prepared.estimate(size, case)),
            length: picked.map_or(LengthFit::NotAsked, |size| prepared.length(size, case)),
        })
    }

    fn cell(&self, field: Field, done: &RowDone<'_>, writer: &mut RowWriter<'_>) {
        let chart: &Chart = &done.prepared.chart;
        let sized = &done.sized;
        let label =
            |size: Option<usize>| size.and_then(|size| chart.sizes.get(size)).map(|size| size.label.as_str());
        let at = |mark: Landmark| done.pressures.iter().find(|one| one.landmark == mark);
        let fall = done.estimated.as_ref().and_then(|one| one.fall.as_ref());
        match field {
            Field::Id | Field::Problem => {}
            Field::Chart => writer.text(Some(done.label)),
            Field::Verdict => writer.word(sized.verdict.word()),
            Field::Size => writer.text(label(sized.size)),
            Field::Variant => match &done.length {
                LengthFit::Takes { name, .. } => writer.text(name.as_deref()),
                _ => writer.empty(),
            },
            Field::Nearest => writer.text(label(sized.nearest)),
            Field::Between => {
                let pair = sized.between.and_then(|(one, other)| label(Some(one)).zip(label(Some(other))));
                writer.text(pair.map(|(one, other)| format!("{one} and {other}")).as_deref());
            }
            Field::Margin => writer.hundredths(sized.margin.map(|(margin, _)| margin)),
            Field::Measure => {
                let measure = sized.margin.and_then(|(_, number)| done.prepared.measure(number));
                match measure {
                    Some(mark) => writer.word(mark.name()),
                    None => writer.empty(),
                }
            }
            Field::InsideChance => writer.number(sized.inside_chance),
            Field::SameAgain => writer.number(done.again.map(|again| again.chance)),
            Field::RunnerUp => writer.text(label(done.again.and_then(|again| again.runner_up))),
            Field::Pressure(mark) => writer.number(at(mark).and_then(|one| one.mmhg)),
            Field::Sd(mark) => writer.number(at(mark).and_then(|one| one.sd)),
            Field::Bound(mark) => writer.number(at(mark).and_then(|one| one.bound)),
            Field::Grade => match fall {
                Some(fall) => writer.word(fall.grade().word()),
                None => writer.empty(),
            },
            Field::RiseChance => writer.number(fall.and_then(|fall| fall.fall.chance)),
            Field::RiseAt => match fall.and_then(|fall| fall.fall.place) {
                Some(mark) => writer.word(mark.name()),
                None => writer.empty(),
            },
            Field::Judged => writer.truth(done.estimated.as_ref().and_then(Estimated::judged)),
            Field::Findings => writer.word(&self.findings(done).join(" ")),
        }
    }

    /// Ids of the findings that a size and its pressure give; those of a record are not there.
    fn findings(&self, done: &RowDone<'_>) -> Vec<&'static str> {
        let mut found = Vec::new();
        let sized = &done.sized;
        match sized.verdict {
            ChartVerdict::Between => found.push(finding::between::ENTRY.id),
            ChartVerdict::MeasureAgain => found.push(finding::measure_again::ENTRY.id),
            ChartVerdict::NotJudged => found.push(finding::not_judged::ENTRY.id),
            ChartVerdict::Size | ChartVerdict::MadeToMeasure => {}
        }
        if matches!(done.length, LengthFit::None { .. }) {
            found.push(finding::no_length::ENTRY.id);
        }
        if sized.verdict == ChartVerdict::Size
            && sized.inside_chance.is_some_and(|chance| chance < self.levels.inside_chance)
        {
            found.push(finding::inside_unsure::ENTRY.id);
        }
        if done.again.is_some_and(|again| again.chance < self.levels.same_again) {
            found.push(finding::same_size_unsure::ENTRY.id);
        }
        if let Some(estimated) = &done.estimated {
            if matches!(estimated.grade(), Some(Grade::Certain | Grade::Likely | Grade::Possible)) {
                found.push(finding::rise::ENTRY.id);
            }
            if estimated.judged() == Some(false) {
                found.push(finding::fall_unknown::ENTRY.id);
            }
            if !estimated.no_contact().is_empty() {
                found.push(finding::no_contact::ENTRY.id);
            }
            if !estimated.beyond().is_empty() {
                found.push(finding::beyond_tested::ENTRY.id);
            }
            if estimated.highest().is_some_and(|(_, mmhg)| mmhg > self.levels.pressure) {
                found.push(finding::pressure_high::ENTRY.id);
            }
        }
        found
    }
}
