//! Owns the opening of the files of a run: each tells its own kind, in any order; every problem of all of them is
//! collected.

use super::Setting;
use super::measured_size::take_measured;
use super::readings_named::{unnamed, without_place};
use crate::garment::{Chart, Fabric, Outfit, Schemes, open_chart, open_fabric, open_outfit};
use crate::input::{FileKind, Problem, Reader, Source, Table};
use crate::record::{
    Record, Wanted, arrange_visits, is_visit_table, read_record, read_visit_table, read_visits,
};
use crate::screening::check_answers;

/// The files of a run, opened.
#[derive(Clone, Debug, Default)]
pub struct Opened {
    /// The visits of one client and limb, oldest first; the last is judged.
    pub visits: Vec<Record>,
    /// The charts, in the order given.
    pub charts: Vec<Chart>,
    /// Garments, wraps and what is worn together, in the order given.
    pub outfits: Vec<Outfit>,
    /// Fabrics, in the order given.
    pub fabrics: Vec<Fabric>,
}

impl Opened {
    /// The newest visit.
    pub fn record(&self) -> Option<&Record> {
        self.visits.last()
    }

    /// The earlier visits, oldest first.
    pub fn earlier(&self) -> &[Record] {
        self.visits.split_last().map_or(&[], |(_, earlier)| earlier)
    }
}

/// Opens sources of any kind.
///
/// # Errors
/// Every problem of every file, and what does not belong together: a record of another client, limb or side; a chart
/// or garment for another limb; a reading of a garment that is not in the run.
pub fn open_files(sources: Vec<Source>, setting: &Setting) -> Result<Opened, Vec<Problem>> {
    let mut opened = Opened::default();
    let mut problems = Vec::new();
    let mut read: Vec<Read> = Vec::new();
    let mut tables: Vec<Table> = Vec::new();
    let mut charts = Vec::new();
    let mut outfits = Vec::new();
    for source in sources {
        if source.is_table() {
            match Table::read(source.clone()) {
                Ok(table) if is_visit_table(table.header()) => tables.push(table),
                Ok(_) => {
                    take(open_chart(source, &setting.schemes), &mut problems, |found| charts.push(found));
                }
                Err(problem) => problems.push(problem),
            }
            continue;
        }
        match source.kind() {
            Some(FileKind::Record) => {
                take(open_record(source, setting), &mut problems, |found| read.push(found));
            }
            Some(FileKind::Visits) => {
                take(open_visits(source, setting), &mut problems, |found| read.extend(found));
            }
            Some(FileKind::Chart) => {
                take(open_chart(source, &setting.schemes), &mut problems, |found| charts.push(found));
            }
            Some(FileKind::Garment | FileKind::Wrap) => {
                take(open_outfit(source, &setting.schemes), &mut problems, |found| outfits.push(found));
            }
            Some(FileKind::Fabric) => {
                take(open_fabric(source), &mut problems, |found| opened.fabrics.push(found));
            }
            Some(kind @ (FileKind::Scheme | FileKind::Rules)) => {
                let option = if kind == FileKind::Scheme { "--scheme-file" } else { "--rules" };
                let what = format!("is a {} file; name it with `{option}`", kind.spoken());
                problems.push(Problem::of_file(&source.name, what));
            }
            None => problems.extend(unknown_kind(source)),
        }
    }
    let like = read.first().map(|one| one.record.clone());
    for table in &tables {
        take(read_visit_table(table, like.as_ref()), &mut problems, |found| {
            read.extend(found.into_iter().map(|record| Read { record, reader: None }));
        });
    }
    let mut readers = Vec::new();
    if problems.is_empty() {
        readers = arrange(read, &mut opened, &mut problems);
    }
    if let Some(record) = opened.visits.last() {
        problems.extend(charts.iter().filter_map(|one| one.limb_problem(record.limb)));
        problems.extend(outfits.iter().filter_map(|one| one.limb_problem(record.limb)));
    }
    opened.charts = charts.into_iter().map(|one| one.chart).collect();
    opened.outfits = outfits.into_iter().map(|one| one.outfit).collect();
    take_measured(&mut opened.charts, &mut opened.outfits);
    if let Some(record) = opened.visits.last() {
        let dropped = unnamed(record, &opened.charts, &opened.outfits);
        let reader = readers.iter().flatten().find(|reader| reader.source().name == record.file);
        match reader {
            Some(reader) => problems.extend(dropped.iter().map(|one| {
                let spot = one.reading.garment.as_ref().map_or(one.reading.spot, |named| named.spot);
                reader.problem_at(spot, "readings, garment", one.what.clone())
            })),
            None => problems.extend(without_place(record, &dropped)),
        }
    }
    if problems.is_empty() { Ok(opened) } else { Err(problems) }
}

/// A record with its reader, for problems that show only beside other files.
pub struct Read {
    /// The record.
    pub record: Record,
    /// Its reader; none where it came from a table.
    reader: Option<Reader>,
}

/// Puts the visits in order; what does not belong together is a problem.
fn arrange(read: Vec<Read>, opened: &mut Opened, problems: &mut Vec<Problem>) -> Vec<Option<Reader>> {
    let (records, readers): (Vec<Record>, Vec<Option<Reader>>) =
        read.into_iter().map(|one| (one.record, one.reader)).unzip();
    match arrange_visits(records) {
        None => {}
        Some(Ok(visits)) => {
            opened.visits = visits.earlier;
            opened.visits.push(visits.newest);
        }
        Some(Err(faults)) => {
            problems.extend(
                faults.iter().map(|fault| fault.problem(readers.get(fault.record).and_then(Option::as_ref))),
            );
        }
    }
    readers
}

fn take<T>(found: Result<T, Vec<Problem>>, problems: &mut Vec<Problem>, keep: impl FnOnce(T)) {
    match found {
        Ok(one) => keep(one),
        Err(found) => problems.extend(found),
    }
}

/// What is wrong with the first key of a file that does not tell its kind by it.
fn unknown_kind(source: Source) -> Vec<Problem> {
    let kinds: Vec<&str> = FileKind::ALL.iter().map(|kind| kind.tag()).collect();
    let name = source.name.clone();
    let reader = match Reader::new(source) {
        Ok(reader) => reader,
        Err(problem) => return vec![problem],
    };
    let what = match reader.kind() {
        Some(kind) => {
            let word = kind.split_once('/').map_or(kind, |(word, _)| word);
            if let Some(near) = FileKind::parse_word(word).filter(|_| word != kind) {
                // Another version, or not on the first line: the reader tells it with its place.
                let _ = reader.fields(near.tag());
                return reader.problems();
            }
            format!("is of the unknown kind `{kind}`; known are {}", kinds.join(", "))
        }
        None => {
            format!(
                "does not name its kind; start with one of: {}, as `tapeline: record/1`",
                kinds.join(", ")
            )
        }
    };
    vec![Problem::of_file(&name, what)]
}

/// Reads one record, held against the rules and schemes.
///
/// # Errors
/// Every problem of the file.
pub fn open_record(source: Source, setting: &Setting) -> Result<Read, Vec<Problem>> {
    let reader = Reader::new(source).map_err(|problem| vec![problem])?;
    let record = read_record(&reader);
    let mut answers = Vec::new();
    if let Some(record) = &record {
        answers = check_answers(&reader, record, &setting.rules, &setting.schemes, setting.today);
        check_schemes(&reader, record, &setting.schemes);
    }
    let mut problems = reader.problems();
    problems.extend(answers);
    match record {
        Some(record) if problems.is_empty() => Ok(Read { record, reader: Some(reader) }),
        _ => Err(problems),
    }
}

fn open_visits(source: Source, setting: &Setting) -> Result<Vec<Read>, Vec<Problem>> {
    let reader = Reader::new(source).map_err(|problem| vec![problem])?;
    let paths = read_visits(&reader).unwrap_or_default();
    let mut all = Vec::new();
    let mut elsewhere = Vec::new();
    for (path, spot) in paths {
        match Source::read_as(&path, FileKind::Record.spoken()) {
            Ok(source) => take(open_record(source, setting), &mut elsewhere, |found| all.push(found)),
            Err(problem) => reader.raise(spot, "visits", problem.to_string()),
        }
    }
    let mut problems = reader.problems();
    problems.extend(elsewhere);
    if problems.is_empty() { Ok(all) } else { Err(problems) }
}

/// Schemes and classes of the prescription have to be known; those of caps are held by `check_answers`.
fn check_schemes(reader: &Reader, record: &Record, schemes: &Schemes) {
    let prescribed =
        record.prescribed.iter().chain(record.limbs.iter().filter_map(|limb| limb.prescribed.as_ref()));
    for one in prescribed {
        if let Some(Wanted::Class { scheme, class }) = &one.wanted {
            check_class(reader, schemes, scheme, class, "prescribed");
        }
    }
}

fn check_class(
    reader: &Reader,
    schemes: &Schemes,
    scheme: &crate::input::Named,
    class: &crate::input::Named,
    field: &str,
) {
    let Some(found) = schemes.find(&scheme.text) else {
        let ids = schemes.ids().join(", ");
        reader.raise(
            scheme.spot,
            field,
            format!("the scheme `{}` is not known; known are {ids}", scheme.text),
        );
        return;
    };
    if found.class(&class.text).is_none() {
        reader.raise(class.spot, field, found.no_such_class(&class.text));
    }
}
