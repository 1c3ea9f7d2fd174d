//! Owns the run of `cover` over a table: the counts of all its blocks.

use super::batch::Worker;
use super::coverage::Coverage;
use super::limb_columns::LimbColumns;
use super::prepared::Prepared;
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

fn count_block(
    charts: &[Prepared],
    columns: &LimbColumns,
    block: &RowBlock,
    known_fall: bool,
    worker: &mut Worker,
    covered: &mut Covered,
) {
    let mut number = block.first_row;
    for row in RowCells::rows(&block.text) {
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
        number += 1;
    }
}
