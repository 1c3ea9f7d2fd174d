//! Owns the writing of a report: standard output, or a file by a temporary name that is renamed.

use std::fs::File;
use std::io::{ErrorKind, Write as _};
use std::path::{Path, PathBuf};

use anyhow::{Context as _, anyhow};

use super::args::OutputArgs;
use super::exit::Failure;

/// Columns of the terminal; 80 in a pipe or a file, unless `COLUMNS` says otherwise.
pub(crate) fn columns() -> usize {
    let told = std::env::var("COLUMNS").ok().and_then(|text| text.trim().parse().ok());
    let seen = || terminal_size::terminal_size().map(|(width, _)| usize::from(width.0));
    told.or_else(seen).unwrap_or(80)
}

/// Writes the whole report where the arguments say.
pub(crate) fn write(text: &[u8], args: &OutputArgs) -> Result<(), Failure> {
    write_to(text, args.output.as_deref().unwrap_or(Path::new("-")), args.force)
}

/// Writes the whole report to a file; `-` is standard output.
pub(crate) fn write_to(text: &[u8], path: &Path, force: bool) -> Result<(), Failure> {
    if path.as_os_str() == "-" {
        return write_stdout(text).map_err(Failure::from);
    }
    write_file(text, path, force).map_err(Failure::from)
}

fn write_stdout(text: &[u8]) -> anyhow::Result<()> {
    let mut out = std::io::stdout().lock();
    match out.write_all(text).and_then(|()| out.flush()) {
        // The reader went away, as `head` does: no error of ours.
        Err(fault) if fault.kind() == ErrorKind::BrokenPipe => Ok(()),
        other => other.context("the report could not be written to standard output"),
    }
}

/// Writes a file completely or not at all.
pub(crate) fn write_file(text: &[u8], path: &Path, force: bool) -> anyhow::Result<()> {
    let name = path.display();
    if path.is_dir() {
        return Err(anyhow!("{name} is a directory; name a file in it"));
    }
    if path.exists() && !path.is_file() {
        // A device or a pipe is written into, never replaced.
        let written = File::options().write(true).open(path).and_then(|mut file| file.write_all(text));
        return match written {
            Err(fault) if fault.kind() == ErrorKind::BrokenPipe => Ok(()),
            other => other.with_context(|| format!("{name} could not be written")),
        };
    }
    if path.exists() && !force {
        return Err(anyhow!("{name} exists and is kept; give another name, or `--force` to replace it"));
    }
    // Behind a link the file itself is replaced, and the link stays.
    let path = &std::fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    let temporary = temporary_beside(path);
    let written = File::create(&temporary)
        .and_then(|mut file| file.write_all(text).and_then(|()| file.sync_all()))
        .and_then(|()| std::fs::rename(&temporary, path));
    if written.is_err() {
        let _ = std::fs::remove_file(&temporary);
    }
    written.with_context(|| format!("{name} could not be written; nothing was left behind"))
}

fn temporary_beside(path: &Path) -> PathBuf {
    let mut name = path.file_name().unwrap_or_default().to_os_string();
    name.push(format!(".{}.part", std::process::id()));
    path.with_file_name(name)
}
