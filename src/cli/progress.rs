//! Owns how far a long run is: a bar on a terminal, nothing anywhere else. The only user of `indicatif`.

use std::io::IsTerminal as _;
use std::time::{Duration, Instant};

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};

/// How far a run is.
pub(crate) struct Progress {
    bar: Option<ProgressBar>,
    last: Instant,
}

/// How often it is drawn anew (house rule: as often as one reads it).
const PAUSE: Duration = Duration::from_millis(200);

impl Progress {
    /// Begins; `bytes` is the length of the table where it is known. Nothing is drawn where standard error is no
    /// terminal.
    pub(crate) fn begin(bytes: Option<u64>) -> Self {
        let bar = std::io::stderr().is_terminal().then(|| {
            let target = ProgressDrawTarget::stderr();
            let bar = ProgressBar::with_draw_target(bytes.filter(|bytes| *bytes > 0), target);
            let form = if bytes.is_some_and(|bytes| bytes > 0) {
                "{bar:30} {percent} %, {msg} rows, {eta} to go"
            } else {
                "{spinner} {msg} rows, {elapsed}"
            };
            if let Ok(style) = ProgressStyle::with_template(form) {
                bar.set_style(style);
            }
            bar
        });
        Self { bar, last: Instant::now() }
    }

    /// Bytes of the table read, and rows written.
    pub(crate) fn told(&mut self, read: u64, rows: u64) {
        let Some(bar) = &self.bar else { return };
        if self.last.elapsed() >= PAUSE {
            self.last = Instant::now();
            bar.set_message(rows.to_string());
            bar.set_position(read);
        }
    }

    /// Takes it away.
    pub(crate) fn end(&self) {
        if let Some(bar) = &self.bar {
            bar.finish_and_clear();
        }
    }
}
