//! Owns what the program says on standard error: a line is written or the failure is kept, never a
//! panic.

use std::io::Write as _;
use std::sync::atomic::{AtomicBool, Ordering};

use tapeline::input::escaped;

static LOST: AtomicBool = AtomicBool::new(false);

/// Says a line, or several; a character that a terminal would obey stands as its code.
pub(crate) fn line(text: &str) {
    let text = text.split('\n').map(escaped).collect::<Vec<_>>().join("\n");
    let mut out = std::io::stderr().lock();
    let written =
        out.write_all(text.as_bytes()).and_then(|()| out.write_all(b"\n")).and_then(|()| out.flush());
    if written.is_err() || super::closed::is_closed(2) {
        LOST.store(true, Ordering::Relaxed);
    }
}

/// Says an error, in the one form of all errors.
pub(crate) fn error(what: &str) {
    line(&format!("tapeline: error: {what}"));
}

/// Says something that is no error.
pub(crate) fn note(what: &str) {
    line(&format!("tapeline: {what}"));
}

/// Whether something that had to be said was lost.
pub(crate) fn was_lost() -> bool {
    LOST.load(Ordering::Relaxed)
}
