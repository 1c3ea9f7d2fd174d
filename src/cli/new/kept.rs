//! Owns the file of a guided entry: one writer at a time, every answer on disk at once.

use std::fs::{File, OpenOptions};
use std::path::{Path, PathBuf};

use anyhow::{Context as _, anyhow};

use crate::cli::{say, writer};

/// The file of a guided entry, held by this run alone.
pub(super) struct Kept {
    /// Where it is.
    pub(super) path: PathBuf,
    lock: PathBuf,
    _held: File,
}

impl Kept {
    /// Holds a file for this run.
    pub(super) fn lock(path: &Path) -> anyhow::Result<Self> {
        writer::is_no_place(path, std::fs::metadata(path).ok().as_ref())?;
        let name = path.file_name().ok_or_else(|| anyhow!("{} names no file", path.display()))?;
        let lock = path.with_file_name(format!(".{}.tapeline-lock", name.to_string_lossy()));
        let held = OpenOptions::new()
            .write(true)
            .create(true)
            .truncate(false)
            .open(&lock)
            .with_context(|| format!("{} cannot be written", path.display()))?;
        held.try_lock().map_err(|_| {
            anyhow!("{} is being written by another run; finish that one first", path.display())
        })?;
        let (shown, left) = (path.display().to_string(), lock.clone());
        // Where no handler can be set, an interruption loses nothing either; it is only not said.
        let _ = ctrlc::set_handler(move || interrupted(&shown, &left));
        Ok(Self { path: path.to_owned(), lock, _held: held })
    }

    /// Puts the text on disk, whole.
    pub(super) fn save(&self, text: &str) -> anyhow::Result<()> {
        writer::save(text.as_bytes(), &self.path)
    }
}

/// Says how to go on, and ends the program; every answer is on disk already.
#[expect(clippy::exit, reason = "an interruption ends the program from its own thread")]
fn interrupted(path: &str, lock: &Path) {
    let _ = std::fs::remove_file(lock);
    say::line("");
    say::note(&format!("stopped; every answer so far is kept in {path}. To go on: the same command again."));
    std::process::exit(2);
}

impl Drop for Kept {
    fn drop(&mut self) {
        let _ = std::fs::remove_file(&self.lock);
    }
}
