//! Owns standard output: a whole text or an error.

use std::io::{ErrorKind, Write as _};

use anyhow::{Context as _, anyhow};

use super::closed::is_closed;

/// Writes bytes to standard output.
///
/// A reader that went away, as `head` does, is no error of ours.
pub(crate) fn write(bytes: &[u8]) -> anyhow::Result<()> {
    if is_closed(1) {
        return Err(anyhow!(
            "standard output is closed, so the report has no place; write it with `-o FILE`"
        ));
    }
    let mut out = std::io::stdout().lock();
    match out.write_all(bytes).and_then(|()| out.flush()) {
        Err(fault) if fault.kind() == ErrorKind::BrokenPipe => Ok(()),
        other => other.context("standard output could not be written"),
    }
}

/// Columns of the terminal; 80 in a pipe or a file, unless `COLUMNS` says otherwise.
pub(crate) fn columns() -> usize {
    let told = std::env::var("COLUMNS").ok().and_then(|text| text.trim().parse().ok());
    let seen = || terminal_size::terminal_size().map(|(width, _)| usize::from(width.0));
    told.or_else(seen).unwrap_or(80)
}
