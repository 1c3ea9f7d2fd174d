//! Owns the run of a batch over several cores: blocks are taken and written in their order, and no more
//! than a few are ever held.

use std::collections::BTreeMap;
use std::io::Write;
use std::sync::{Condvar, Mutex, PoisonError};

use super::batch::{Batch, BlockDone, MOST_TOLD, Worker};
use super::ids::Ids;
use crate::input::{Problem, RowBlocks};

/// Blocks that may wait for an earlier one, for each worker (house rule: enough that none stands idle).
const AHEAD: u64 = 4;

/// How a run ended.
#[derive(Debug, Default)]
pub struct BatchEnd {
    /// Rows written.
    pub rows: u64,
    /// Rows with a problem.
    pub problems: u64,
    /// Rows with a girth that adults rarely have.
    pub unusual: u64,
    /// Rows read without an id.
    pub nameless: u64,
    /// Rows read with the id of a row before them, as far as that is remembered.
    pub repeated: u64,
    /// The first rows of which something is told, as `row 7: …`.
    pub told: Vec<String>,
    /// Why the table could not be read to its end.
    pub input: Option<Problem>,
    /// Why the output could not be written.
    pub output: Option<std::io::Error>,
}

/// What is written, in order.
struct Ordered<'o> {
    out: &'o mut (dyn Write + Send),
    told: &'o mut (dyn FnMut(u64, u64) + Send),
    next: u64,
    waiting: BTreeMap<u64, BlockDone>,
    ids: Ids,
    end: BatchEnd,
}

impl Ordered<'_> {
    fn put(&mut self, batch: &Batch, done: BlockDone) {
        self.waiting.insert(done.number, done);
        while let Some(mut done) = self.waiting.remove(&self.next) {
            self.next += 1;
            self.end.repeated += batch.settle(&mut done, &mut self.ids);
            let room = MOST_TOLD.saturating_sub(self.end.told.len());
            self.end.told.extend(done.told.into_iter().take(room).map(|(_, what)| what));
            self.end.nameless += done.nameless;
            self.end.rows += done.rows;
            self.end.problems += done.problems;
            self.end.unusual += done.unusual;
            if self.end.output.is_none() {
                self.end.output = self.out.write_all(&done.out).err();
            }
            (self.told)(done.read, self.end.rows);
        }
    }

    fn is_over(&self) -> bool {
        self.end.output.is_some() || self.end.input.is_some()
    }
}

/// Runs a batch over a table with `threads` workers; `told` hears of bytes read and rows written. The output is
/// the same for any number of workers.
pub fn run_batch(
    batch: &Batch,
    blocks: RowBlocks,
    threads: usize,
    out: &mut (dyn Write + Send),
    told: &mut (dyn FnMut(u64, u64) + Send),
) -> BatchEnd {
    let mut end = BatchEnd { output: out.write_all(&batch.head()).err(), ..BatchEnd::default() };
    if end.output.is_some() {
        return end;
    }
    let ordered = Ordered { out, told, next: 0, waiting: BTreeMap::new(), ids: Ids::default(), end };
    let (table, written, turn) = (Mutex::new(blocks), Mutex::new(ordered), Condvar::new());
    let work = || {
        let mut worker = Worker::default();
        let ahead = AHEAD * u64::try_from(threads).unwrap_or(1);
        loop {
            let block = table.lock().unwrap_or_else(PoisonError::into_inner).next_block();
            let mut held = written.lock().unwrap_or_else(PoisonError::into_inner);
            let block = match block {
                Ok(Some(block)) => block,
                Ok(None) => return,
                Err(problem) => {
                    held.end.input = Some(problem);
                    turn.notify_all();
                    return;
                }
            };
            while block.number > held.next + ahead && !held.is_over() {
                held = turn.wait(held).unwrap_or_else(PoisonError::into_inner);
            }
            if held.is_over() {
                return;
            }
            drop(held);
            let done = batch.run(&block, &mut worker);
            written.lock().unwrap_or_else(PoisonError::into_inner).put(batch, done);
            turn.notify_all();
        }
    };
    if threads <= 1 {
        work();
    } else {
        std::thread::scope(|scope| {
            for _ in 1..threads {
                scope.spawn(work);
            }
            work();
        });
    }
    let ordered = written.into_inner().unwrap_or_else(PoisonError::into_inner);
    end = ordered.end;
    if end.output.is_none() {
        end.output = ordered.out.flush().err();
    }
    end
}
