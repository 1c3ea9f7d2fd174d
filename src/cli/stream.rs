//! Owns standard output: a whole text or an error, a closed stream told from an open one.

use std::io::{ErrorKind, Write as _};

use anyhow::{Context as _, anyhow};

/// Writes bytes to standard output.
///
/// A reader that went away, as `head` does, is no error of ours.
pub(crate) fn write(bytes: &[u8]) -> anyhow::Result<()> {
    if is_closed(1) {
        return Err(anyhow!(
            "standard output is closed (or the null device opened for reading too, which looks the same), so \
             the report has no place; write it with `-o FILE`, or `-o /dev/null` where the exit status is enough"
        ));
    }
    let mut out = std::io::stdout().lock();
    match out.write_all(bytes).and_then(|()| out.flush()) {
        Err(fault) if fault.kind() == ErrorKind::BrokenPipe => Ok(()),
        other => other.context("standard output could not be written"),
    }
}

/// Whether a standard stream (1 or 2) was closed when the program started.
///
/// The runtime opens the null device for reading and writing in place of a closed stream; a shell's
/// `>/dev/null` is open for writing alone. A null device that was given open for both cannot be told from
/// a closed stream without code that runs before the runtime, which needs `unsafe`; it counts as closed,
/// since a lost report is worse than a status that says so, and the message names the way out.
#[cfg(target_os = "linux")]
pub(crate) fn is_closed(stream: u8) -> bool {
    let null = std::fs::read_link(format!("/proc/self/fd/{stream}"))
        .is_ok_and(|target| target.as_os_str() == "/dev/null");
    let about = || std::fs::read_to_string(format!("/proc/self/fdinfo/{stream}")).unwrap_or_default();
    // Octal flags; the last digit holds the access mode, 2 for reading and writing.
    null && about()
        .lines()
        .any(|line| line.strip_prefix("flags:").is_some_and(|flags| flags.trim().ends_with('2')))
}

/// Whether a standard stream was closed; not told on this system.
#[cfg(not(target_os = "linux"))]
pub(crate) fn is_closed(_: u8) -> bool {
    false
}

/// Columns of the terminal; 80 in a pipe or a file, unless `COLUMNS` says otherwise.
pub(crate) fn columns() -> usize {
    let told = std::env::var("COLUMNS").ok().and_then(|text| text.trim().parse().ok());
    let seen = || terminal_size::terminal_size().map(|(width, _)| usize::from(width.0));
    told.or_else(seen).unwrap_or(80)
}
