//! Owns the run of `cover` over a table: the counts of all its blocks.

use super::batch::Worker;
use super::case::place;
use super::coverage::Coverage;
use super::limb_columns::LimbColumns;
use super::prepared::Prepared;
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
    /// What is wrong with the first of them.
    pub told: Vec<String>,
}

/// Counts a table of limbs against charts; rows that cannot be read are counted and left out.
///
/// # Errors
/// One [`Problem`] where the table cannot be read to its end.
pub fn cover(
    charts: &[Prepared],
    columns: &LimbColumns,
    mut blocks: RowBlocks,
    known_fall: bool,
) -> Result<Covered, Problem> {
    let mut covered = Covered::default();
    let mut worker = Worker::default();
    while let Some(block) = blocks.next_block()? {
        count_block(charts, columns, &block, known_fall, &mut worker, &mut covered);
    }
    Ok(covered)
}

/// The girths of the limbs of a table at `measures`, tenths of a millimetre, those with all of them; at most
/// `most`, evenly taken from all. The second is how many there were.
///
/// # Errors
/// One [`Problem`] where the table cannot be read to its end.
pub fn girths(
    measures: &[Landmark],
    columns: &LimbColumns,
    mut blocks: RowBlocks,
    most: usize,
) -> Result<(Vec<Vec<i64>>, usize), Problem> {
    let mut worker = Worker::default();
    let mut all: Vec<Vec<i64>> = Vec::new();
    let (mut every, mut seen) = (1, 0);
    while let Some(block) = blocks.next_block()? {
        for row in RowCells::rows(&block.text) {
            worker.cells.split(row, columns.sign);
            if row.iter().all(u8::is_ascii_whitespace) || worker.case.read(&worker.cells, columns).is_err() {
                continue;
            }
            let own: Vec<i64> =
                measures.iter().map(|mark| i64::from(worker.case.girth(place(*mark)))).collect();
            if own.contains(&0) {
                continue;
            }
            if seen % every == 0 {
                all.push(own);
            }
            seen += 1;
            if all.len() > most {
                // Every other one stays.
                let mut number = 0_usize;
                all.retain(|_| {
                    number += 1;
                    number % 2 == 1
                });
                every *= 2;
            }
        }
    }
    Ok((all, seen))
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
        if !row.iter().all(u8::is_ascii_whitespace) {
            worker.cells.split(row, columns.sign);
            match worker.case.read(&worker.cells, columns) {
                Ok(()) => covered.coverage.count(&worker.case, charts, known_fall, &mut worker.scratch),
                Err(what) => {
                    covered.problems += 1;
                    if covered.told.len() < MOST_TOLD {
                        covered.told.push(format!("row {number}: {what}"));
                    }
                }
            }
        }
    }
}
