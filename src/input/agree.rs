//! Owns the watch over the keys as data: which keys of a block were asked for (in builds for testing),
//! so that a test can hold the tables and the readers against each other.

use std::cell::RefCell;
use std::collections::BTreeSet;

use super::keys::Block;

thread_local! {
    static ASKED: RefCell<BTreeSet<(&'static str, String)>> = const { RefCell::new(BTreeSet::new()) };
}

/// Notes that a key of a block was asked for.
pub(super) fn note(block: &'static Block, key: &str) {
    ASKED.with_borrow_mut(|asked| {
        asked.insert((block.name, key.to_owned()));
    });
}

/// Every key that was asked for on this thread, with its block's name; empty in a build with optimisation.
pub fn keys_asked() -> Vec<(&'static str, String)> {
    ASKED.with_borrow(|asked| asked.iter().cloned().collect())
}
