//! Owns the visits of one client and limb: which is the newest, which are its course, and what does not
//! belong together. Also the reading of a list of visits.

use std::path::PathBuf;

use super::Record;
use crate::anatomy::Side;
use crate::input::{Item, Place, Problem, Reader, Spot};

/// The visits of one client and limb.
#[derive(Clone, Debug)]
pub struct Visits {
    /// The one that is judged.
    pub newest: Record,
    /// The others, oldest first.
    pub earlier: Vec<Record>,
}

impl Visits {
    /// The earlier visits, oldest first, as the rooms below take them.
    pub fn earlier(&self) -> Vec<&Record> {
        self.earlier.iter().collect()
    }

    /// Every visit, oldest first.
    pub fn all(&self) -> impl Iterator<Item = &Record> {
        self.earlier.iter().chain(std::iter::once(&self.newest))
    }
}

/// A record that does not belong to the others.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct VisitFault {
    /// Which of the records as they were given, from 0.
    pub record: usize,
    /// Its file.
    pub file: String,
    /// Where in it.
    pub spot: Spot,
    /// The key.
    pub field: &'static str,
    /// What is wrong and what would be accepted.
    pub what: String,
}

impl VisitFault {
    /// The problem of it; `reader` is the record's, none where it came from a table (its spot is the line).
    pub fn problem(&self, reader: Option<&Reader>) -> Problem {
        if let Some(reader) = reader {
            return reader.problem_at(self.spot, self.field, self.what.clone());
        }
        let line = usize::try_from(self.spot.0).unwrap_or_default();
        let place = (line > 0).then(|| Place::of(line, 1, ""));
        Problem { field: self.field.to_owned(), ..Problem::at(&self.file, place, self.what.clone()) }
    }
}

/// Puts records of one client and limb in order, whatever the order they were given in; none of no records.
///
/// # Errors
/// A [`VisitFault`] for each record of another client, limb or side than the newest, and for each that was
/// measured on the day of another one without a time to tell them apart.
pub fn arrange_visits(records: Vec<Record>) -> Option<Result<Visits, Vec<VisitFault>>> {
    let mut sorted: Vec<(usize, Record)> = records.into_iter().enumerate().collect();
    // Given in any order: equal moments are a fault, so the order among them is never seen.
    sorted.sort_by_key(|(_, record)| moment(record));
    let mut faults = Vec::new();
    for pair in sorted.windows(2) {
        let [(_, one), (at, other)] = pair else { continue };
        let told_apart = one.measured_on != other.measured_on
            || (one.measured_at.is_some()
                && other.measured_at.is_some()
                && one.measured_at != other.measured_at);
        if !told_apart {
            let what = format!(
                "is the day of `{}` too; give each record once, and where both are meant write the time, as `measured_on: {}T09:30`",
                one.file, other.measured_on
            );
            faults.push(fault(*at, other, other.spots.measured_on, "measured_on", what));
        }
    }
    let (_, newest) = sorted.pop()?;
    for (at, record) in &sorted {
        faults.extend(mismatch(*at, record, &newest));
    }
    faults.sort_by_key(|one| one.record);
    Some(if faults.is_empty() {
        Ok(Visits { newest, earlier: sorted.into_iter().map(|(_, record)| record).collect() })
    } else {
        Err(faults)
    })
}

fn moment(record: &Record) -> (jiff::civil::Date, Option<jiff::civil::Time>) {
    (record.measured_on, record.measured_at)
}

fn fault(at: usize, record: &Record, spot: Spot, field: &'static str, what: String) -> VisitFault {
    VisitFault { record: at, file: record.file.clone(), spot, field, what }
}

fn mismatch(at: usize, record: &Record, newest: &Record) -> Option<VisitFault> {
    if record.client != newest.client {
        let what = format!(
            "is `{}`, but the newest record, `{}`, is of `{}`; visits are of one client",
            record.client, newest.file, newest.client
        );
        return Some(fault(at, record, record.spots.client, "client", what));
    }
    if (record.limb, sides(record)) != (newest.limb, sides(newest)) {
        let what = format!(
            "is `{}`, but the newest record, `{}`, is of `{}`; visits are of one limb and side",
            record.limb_words(),
            newest.file,
            newest.limb_words()
        );
        return Some(fault(at, record, record.spots.limb, "limb", what));
    }
    None
}

fn sides(record: &Record) -> Vec<Side> {
    record.limbs.iter().map(|limb| limb.side).collect()
}

impl Record {
    /// The limb as files write it: `left arm`, `both legs`.
    pub fn limb_words(&self) -> String {
        match self.limbs.as_slice() {
            [one] => format!("{} {}", one.side.name(), self.limb.name()),
            _ => format!("both {}s", self.limb.name()),
        }
    }
}

/// Reads a list of visits: the files it names, beside it, each with its place.
pub fn read_visits(reader: &Reader) -> Option<Vec<(PathBuf, Spot)>> {
    let fields = reader.fields("visits/1")?;
    let item = fields.required("visits", "the records, as `visits: [visit-1.yaml, visit-2.yaml]`");
    let names = item.as_ref().and_then(Item::names);
    fields.finish();
    let names = names?;
    if names.is_empty()
        && let Some(item) = item
    {
        item.refuse("names no visit; write at least one, as `visits: [visit-1.yaml]`");
        return None;
    }
    Some(names.into_iter().map(|one| (reader.source().beside(&one.text), one.spot)).collect())
}
