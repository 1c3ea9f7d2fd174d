//! Owns which ids of a table came before, in bounded memory: of a repeated one the earlier row is told, as far as that
//! lies within the rows remembered.

use std::collections::HashMap;
use std::hash::{DefaultHasher, Hasher};

/// Ids that are remembered at the least (house rule: more than a clinic's caseload, in about 2 MB).
pub const REMEMBERED: usize = 50_000;

/// The ids of the rows so far. They are kept as numbers made of them: two ids of a hundred thousand would share one in
/// one table of some thousand million (derived: n²/2⁶⁵).
#[derive(Debug, Default)]
pub(super) struct Ids {
    now: HashMap<u64, u64>,
    before: HashMap<u64, u64>,
}

impl Ids {
    /// The number made of an id.
    pub(super) fn of(id: &[u8]) -> u64 {
        let mut hasher = DefaultHasher::new();
        hasher.write(id);
        hasher.finish()
    }

    /// Remembers the id of a row; the row that had it first, where it is remembered.
    pub(super) fn again(&mut self, id: u64, row: u64) -> Option<u64> {
        let earlier = self.now.get(&id).or_else(|| self.before.get(&id)).copied();
        if self.now.len() >= REMEMBERED {
            std::mem::swap(&mut self.now, &mut self.before);
            self.now.clear();
        }
        self.now.entry(id).or_insert(earlier.unwrap_or(row));
        earlier
    }
}
