//! Owns the sheet as a whole.

use super::Leaf;

/// A sheet: what every form of it draws.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// The document's title.
    pub title: String,
    /// The leaves.
    pub leaves: Vec<Leaf>,
    /// The day it was made, `2026-03-14`.
    pub made_on: String,
    /// The program and its version.
    pub made_by: String,
}

impl Sheet {
    /// The leaves by their page numbers: each run of leaves that is numbered through. A leaf that
    /// stands apart begins one.
    pub fn numbered(&self) -> Vec<&[Leaf]> {
        let mut runs = Vec::new();
        let mut rest = self.leaves.as_slice();
        while !rest.is_empty() {
            let next = rest.iter().skip(1).position(|leaf| leaf.apart).map_or(rest.len(), |at| at + 1);
            let (run, after) = rest.split_at(next);
            runs.push(run);
            rest = after;
        }
        runs
    }
}
