//! Owns what happens when a long run is interrupted or told to end (Ctrl-C, SIGTERM): nothing half written is left,
//! and it is said.

use std::io::IsTerminal as _;
use std::path::PathBuf;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError, TryLockError};
use std::time::{Duration, Instant};

use super::say;

/// What is not complete yet.
pub(crate) enum Unfinished {
    /// Nothing: the run ends by itself at once.
    Nothing,
    /// Rows on their way into a stream.
    Stream,
    /// A file under a temporary name.
    File {
        /// Its name until it is complete.
        temporary: PathBuf,
        /// Where it would be.
        place: String,
        /// Whether a file stands there already.
        replaced: bool,
    },
}

/// The watch of one run.
pub(crate) struct Interrupt(Arc<Mutex<Unfinished>>);

/// How long an interruption waits for rows that a stream does not take (house rule: one does not wait longer).
const PATIENCE: Duration = Duration::from_secs(1);

/// How often it looks (house rule).
const LOOK: Duration = Duration::from_millis(5);

impl Interrupt {
    /// Watches from now on. Where no handler can be set, an interruption ends the run at once, and the next run clears
    /// away what it left.
    pub(crate) fn watch() -> Self {
        let unfinished = Arc::new(Mutex::new(Unfinished::Stream));
        let seen = Arc::clone(&unfinished);
        let _ = ctrlc::set_handler(move || interrupted(&seen));
        Self(unfinished)
    }

    /// Holds an interruption off while something is made whole.
    pub(crate) fn hold(&self) -> MutexGuard<'_, Unfinished> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Clears away, says so, and ends the program.
#[expect(clippy::exit, reason = "an interruption ends the program from its own thread")]
fn interrupted(unfinished: &Mutex<Unfinished>) {
    let begun = Instant::now();
    let held = loop {
        match unfinished.try_lock() {
            Ok(held) => break Some(held),
            Err(TryLockError::Poisoned(held)) => break Some(held.into_inner()),
            Err(TryLockError::WouldBlock) if begun.elapsed() > PATIENCE => break None,
            Err(TryLockError::WouldBlock) => std::thread::sleep(LOOK),
        }
    };
    if matches!(held.as_deref(), Some(Unfinished::Nothing)) {
        return;
    }
    // Below a bar that is left on a terminal.
    if std::io::stderr().is_terminal() {
        say::line("");
    }
    match held.as_deref() {
        Some(Unfinished::File { temporary, place, replaced }) => {
            let _ = std::fs::remove_file(temporary);
            let left = if *replaced { "is as it was" } else { "was not written" };
            say::error(&format!("interrupted; {place} {left}, and nothing was left behind"));
        }
        Some(Unfinished::Stream | Unfinished::Nothing) | None => {
            say::error("interrupted; the rows so far are written, and the rest is missing");
        }
    }
    std::process::exit(2);
}
