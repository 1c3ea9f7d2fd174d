//! Owns the run over a table of limbs: one row out for each row in, in its order.

use super::case::Case;
use super::field::{FIELD_NAMES, Field};
use super::form::{BatchForm, RowWriter, cell_text, csv_text, json_text};
use super::ids::Ids;
use super::limb_columns::LimbColumns;
use super::noted::Noted;
use super::prepared::{CasePressure, Prepared, Scratch};
use super::sized::Sized;
use super::usual::{Usual, is_blank};
use crate::anatomy::Landmark;
use crate::assessment::Rank;
use crate::estimate::Estimated;
use crate::finding::{self, Finding, FindingId};
use crate::garment::Chart;
use crate::input::{RowBlock, RowCells};
use crate::rules::{NumberId, Rules};
use crate::sizing::{ChartVerdict, LengthFit, SameAgain};

/// Most rows that are told (house rule).
pub(super) const MOST_TOLD: usize = 10;

/// Levels below or above which a finding is named.
#[derive(Clone, Copy, Debug)]
struct BatchLevels {
    /// Chance of lying inside below which it is said.
    inside_chance: f64,
    /// Chance of the same size again below which it is said.
    same_again: f64,
}

impl BatchLevels {
    /// The levels of a set of rules.
    fn of(rules: &Rules) -> Self {
        Self {
            inside_chance: rules.number(NumberId::InsideChance),
            same_again: rules.number(NumberId::SameAgain),
        }
    }
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
    usual: Usual,
    needs_fall: bool,
    needs_findings: bool,
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
    /// How many were read with a girth that adults rarely have.
    pub unusual: u64,
    /// How many were read whose id is blank.
    pub nameless: u64,
    /// The first rows with a problem or without an id, and what is told of each.
    pub(super) told: Vec<(u64, String)>,
    /// The ids of the rows read, in their order.
    pub(super) ids: Vec<Noted>,
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
    length: LengthFit,
    /// The whole estimate of the size picked, with its findings.
    estimated: Option<(Estimated, Vec<Finding>)>,
}

impl<'b> RowDone<'b> {
    /// What sizing says.
    fn of(label: &'b str, prepared: &'b Prepared, sized: Sized, case: &Case) -> Self {
        let length = sized.size.map_or(LengthFit::NotAsked, |size| prepared.length(size, case));
        Self { label, prepared, sized, pressures: Vec::new(), again: None, length, estimated: None }
    }

    /// Estimates the size picked; its findings where they are asked for.
    fn estimate(&mut self, case: &Case, with_findings: bool) {
        self.estimated = self.sized.size.and_then(|size| {
            let estimated = self.prepared.estimate(size, case)?;
            let found = with_findings.then(|| self.prepared.findings(size, case, &estimated));
            Some((estimated, found.unwrap_or_default()))
        });
    }

    /// How the chart at `place` ranks, by what is worked out.
    fn rank(&self, place: usize) -> Rank {
        let known = self.estimated.as_ref().map(|(estimated, found)| (estimated, found.as_slice()));
        self.prepared.outcomes(&self.sized, &self.length, known).rank(place)
    }
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
        rules: &Rules,
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
            needs_findings: fields.contains(&Field::Findings),
            needs_again: fields.iter().any(|field| field.needs_again()),
            usual: Usual::of(columns.limb, rules),
            charts,
            columns,
            fields,
            form,
            levels: BatchLevels::of(rules),
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
        let mut done = BlockDone {
            number: block.number,
            out: Vec::with_capacity(block.text.len() * 4),
            rows: 0,
            problems: 0,
            unusual: 0,
            nameless: 0,
            told: Vec::new(),
            ids: Vec::new(),
            read: block.read,
        };
        for (number, row) in (block.first_row..).zip(RowCells::rows(&block.text)) {
            if !is_blank(row, self.columns.sign) {
                worker.cells.split(row, self.columns.sign);
                self.row(number, worker, &mut done);
            }
        }
        done
    }

    /// Writes one row.
    fn row(&self, number: u64, worker: &mut Worker, block: &mut BlockDone) {
        let Worker { cells, case, scratch } = worker;
        let read = case.read(cells, &self.columns);
        let code = self.columns.code.map(|at| cells.get(at).unwrap_or_default());
        let nameless = code.is_some_and(<[u8]>::is_empty);
        let problem = match &read {
            Err(what) => Some(format!("row {number}: {what}")),
            Ok(()) if nameless => Some(format!("row {number}: has no id")),
            Ok(()) => None,
        };
        let mut open = None;
        let mut writer = RowWriter::begin(self.form, &mut block.out, &self.keys);
        let done = match &read {
            Ok(()) => self.best(case, scratch),
            Err(_) => None,
        };
        for field in &self.fields {
            match field {
                Field::Id => match code {
                    Some(code) if !nameless => writer.text(Some(&String::from_utf8_lossy(code))),
                    // Beside ids of a table a bare number could be one of them.
                    Some(_) => writer.text(Some(&format!("row {number}"))),
                    None => writer.text(Some(&number.to_string())),
                },
                Field::Problem if problem.is_none() => open = Some(writer.left_open()),
                Field::Problem => writer.text(problem.as_deref()),
                field => match &done {
                    Some(done) => self.cell(*field, done, case, &mut writer),
                    None => writer.empty(),
                },
            }
        }
        writer.end();
        block.rows += 1;
        block.problems += u64::from(read.is_err());
        block.unusual += u64::from(read.is_ok() && self.usual.is_unusual(case));
        block.nameless += u64::from(read.is_ok() && nameless);
        if let Some(problem) = problem
            && block.told.len() < MOST_TOLD
        {
            block.told.push((number, problem));
        }
        if let Some(code) = code.filter(|_| read.is_ok() && !nameless) {
            block.ids.push(Noted { row: number, id: Ids::of(code), problem: open });
        }
    }

    /// Tells of the ids of a block that rows before it have as well: in the cells left open for it, and to `told`.
    pub(super) fn settle(&self, block: &mut BlockDone, ids: &mut Ids) -> u64 {
        let mut repeated = 0;
        let mut cells = Vec::new();
        for noted in std::mem::take(&mut block.ids) {
            if let Some(earlier) = ids.again(noted.id, noted.row) {
                repeated += 1;
                let what = format!("row {}: has the id of row {earlier}", noted.row);
                cells.extend(noted.problem.map(|place| (place, what.clone())));
                block.told.push((noted.row, what));
            }
        }
        block.told.sort_unstable();
        block.told.truncate(MOST_TOLD);
        if cells.is_empty() {
            return repeated;
        }
        let mut out = Vec::with_capacity(block.out.len() + 64 * cells.len());
        let mut from = 0;
        for (place, what) in cells {
            out.extend_from_slice(block.out.get(from..place.start).unwrap_or_default());
            cell_text(self.form, &mut out, &what);
            from = place.end;
        }
        out.extend_from_slice(block.out.get(from..).unwrap_or_default());
        block.out = out;
        repeated
    }

    /// Whether the column `problem` is written.
    pub fn writes_problems(&self) -> bool {
        self.fields.contains(&Field::Problem)
    }

    /// The case against the chart that serves it best, in the order of `check`; with one chart nothing is ranked.
    fn best(&self, case: &Case, scratch: &mut Scratch) -> Option<RowDone<'_>> {
        if let [(label, prepared)] = self.charts.as_slice() {
            let sized = prepared.size(case, scratch);
            let mut done = RowDone::of(label, prepared, sized, case);
            if self.needs_fall {
                done.estimate(case, self.needs_findings);
            }
            return Some(self.finish(done, case));
        }
        let mut all: Vec<(Rank, usize, RowDone<'_>)> = Vec::with_capacity(self.charts.len());
        for (place, (label, prepared)) in self.charts.iter().enumerate() {
            let sized = prepared.size(case, scratch);
            let done = RowDone::of(label, prepared, sized, case);
            all.push((done.rank(place), place, done));
        }
        all.sort_by_key(|(rank, ..)| *rank);
        let mut best: Option<(Rank, RowDone<'_>)> = None;
        for (hope, place, mut done) in all {
            // What an estimate finds never ranks a chart higher.
            if best.as_ref().is_some_and(|(held, _)| *held < hope) {
                break;
            }
            done.estimate(case, true);
            let rank = done.rank(place);
            if best.as_ref().is_none_or(|(held, _)| rank < *held) {
                best = Some((rank, done));
            }
        }
        best.map(|(_, done)| self.finish(done, case))
    }

    /// The rest of what the columns ask for.
    fn finish<'b>(&self, mut done: RowDone<'b>, case: &Case) -> RowDone<'b> {
        let (sized, prepared) = (done.sized, done.prepared);
        done.pressures = sized.size.map_or_else(Vec::new, |size| prepared.pressures(size, case).collect());
        done.again = sized
            .size
            .filter(|_| self.needs_again && sized.verdict == ChartVerdict::Size)
            .and_then(|size| prepared.same_again(size, case));
        done
    }

    fn cell(&self, field: Field, done: &RowDone<'_>, case: &Case, writer: &mut RowWriter<'_>) {
        let chart: &Chart = &done.prepared.chart;
        let sized = &done.sized;
        let label =
            |size: Option<usize>| size.and_then(|size| chart.sizes.get(size)).map(|size| size.label.as_str());
        let at = |mark: Landmark| done.pressures.iter().find(|one| one.landmark == mark);
        let estimated = done.estimated.as_ref().map(|(estimated, _)| estimated);
        let fall = estimated.and_then(|one| one.fall.as_ref());
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
            Field::Judged => writer.truth(estimated.and_then(Estimated::judged)),
            Field::Findings => writer.word(&self.findings(done, case).join(" ")),
        }
    }

    /// Ids of the findings that a size and its pressure give; those of a record are not there.
    fn findings(&self, done: &RowDone<'_>, case: &Case) -> Vec<&'static str> {
        let mut found = Vec::new();
        if self.usual.is_unusual(case) {
            found.push(finding::unusual_girth::ENTRY.id);
        }
        let sized = &done.sized;
        match sized.verdict {
            ChartVerdict::Between => found.push(finding::between::ENTRY.id),
            ChartVerdict::MeasureAgain => found.push(finding::measure_again::ENTRY.id),
            ChartVerdict::NotJudged => found.push(finding::not_judged::ENTRY.id),
            ChartVerdict::Size | ChartVerdict::MadeToMeasure => {}
        }
        if matches!(done.length, LengthFit::None { .. } | LengthFit::Unknown(_)) {
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
        for one in done.estimated.iter().flat_map(|(_, own)| own) {
            if let FindingId::Own(entry) = one.id
                && !found.contains(&entry.id)
            {
                found.push(entry.id);
            }
        }
        found
    }
}
