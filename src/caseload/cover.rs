//! Owns the run of `cover` over a table: the counts of all its blocks.

use std::sync::{Mutex, PoisonError};

use super::batch::Worker;
use super::case::place;
use super::coverage::Coverage;
use super::limb_columns::LimbColumns;
use super::prepared::Prepared;
use super::usual::is_blank;
use crate::anatomy::Landmark;
use crate::input::{Problem, RowBlock, RowBlocks, RowCells};

/// Most rows whose problem is told (house rule, as for files).
const MOST_TOLD: usize = 50;

/// A caseload counted.
#[derive(Debug, Default)]
pub struct Covered {
    /// The counts.
    pub coverage: Coverage,
    /// Rows that could not be read.
    pub problems: u64,
    /// The first of them: their row, and what is wrong.
    pub told: Vec<(u64, String)>,
}

/// Counts a table of limbs against charts with `threads` workers; rows that cannot be read are counted and left
/// out. The counts are the same for any number of workers.
///
/// # Errors
/// One [`Problem`] where the table cannot be read to its end.
pub fn cover(
    charts: &[Prepared],
    columns: &LimbColumns,
    blocks: RowBlocks,
    known_fall: bool,
    threads: usize,
) -> Result<Covered, Problem> {
    let (table, all) = (Mutex::new(blocks), Mutex::new((Covered::default(), None)));
    let work = || {
        let (mut worker, mut own, mut fault) = (Worker::default(), Covered::default(), None);
        loop {
            let block = table.lock().unwrap_or_else(PoisonError::into_inner).next_block();
            match block {
                Ok(Some(block)) => {
                    count_block(charts, columns, &block, known_fall, &mut worker, &mut own);
                }
                Ok(None) => break,
                Err(problem) => {
                    fault = Some(problem);
                    break;
                }
            }
        }
        let mut held = all.lock().unwrap_or_else(PoisonError::into_inner);
        held.0.add(own);
        held.1 = held.1.take().or(fault);
    };
    std::thread::scope(|scope| {
        for _ in 1..threads {
            scope.spawn(work);
        }
        work();
    });
    match all.into_inner().unwrap_or_else(PoisonError::into_inner) {
        (_, Some(problem)) => Err(problem),
        (covered, None) => Ok(covered),
    }
}

impl Covered {
    /// Adds what another worker counted; the first problems by their rows are kept.
    fn add(&mut self, other: Self) {
        self.coverage.add(&other.coverage);
        self.problems += other.problems;
        self.told.extend(other.told);
        self.told.sort();
        self.told.truncate(MOST_TOLD);
    }
}

/// The girths of a caseload, as far as sizes are placed for it.
#[derive(Clone, Debug, Default)]
pub struct Girths {
    /// Limbs with every girth asked for, tenths of a millimetre; at most as many as were asked for, evenly taken.
    pub limbs: Vec<Vec<i64>>,
    /// How many limbs have every girth.
    pub judged: u64,
    /// Rows read.
    pub rows: u64,
    /// Rows that could not be read.
    pub problems: u64,
    /// The first of them: their row, and what is wrong.
    pub told: Vec<(u64, String)>,
}

/// The girths of the limbs of a table at `measures`, of at most `most` limbs.
///
/// # Errors
/// One [`Problem`] where the table cannot be read to its end.
pub fn girths(
    measures: &[Landmark],
    columns: &LimbColumns,
    mut blocks: RowBlocks,
    most: usize,
) -> Result<Girths, Problem> {
    let mut worker = Worker::default();
    let mut found = Girths::default();
    let mut every = 1;
    while let Some(block) = blocks.next_block()? {
        for (number, row) in (block.first_row..).zip(RowCells::rows(&block.text)) {
            if is_blank(row, columns.sign) {
                continue;
            }
            worker.cells.split(row, columns.sign);
            if let Err(what) = worker.case.read(&worker.cells, columns) {
                found.problems += 1;
                if found.told.len() < MOST_TOLD {
                    found.told.push((number, what));
                }
                continue;
            }
            found.rows += 1;
            let own: Vec<i64> =
                measures.iter().map(|mark| i64::from(worker.case.girth(place(*mark)))).collect();
            if own.contains(&0) {
                continue;
            }
            if found.judged % every == 0 {
                found.limbs.push(own);
            }
            found.judged += 1;
            if found.limbs.len() > most {
                // Every other one stays.
                let mut number = 0_usize;
                found.limbs.retain(|_| {
                    number += 1;
                    number % 2 == 1
                });
                every *= 2;
            }
        }
    }
    Ok(found)
}

fn count_block(
    charts: &[Prepared],
    columns: &LimbColumns,
    block: &RowBlock,
    known_fall: bool,
    worker: &mut Worker,
    covered: &mut Covered,
) {
    for (number, row) in (block.first_row..).zip(RowCells::rows(&block.text)) {
        if !is_blank(row, columns.sign) {
            worker.cells.split(row, columns.sign);
            match worker.case.read(&worker.cells, columns) {
                Ok(()) => covered.coverage.count(&worker.case, charts, known_fall, &mut worker.scratch),
                Err(what) => {
                    covered.problems += 1;
                    if covered.told.len() < MOST_TOLD {
                        covered.told.push((number, what));
                    }
                }
            }
        }
    }
}
