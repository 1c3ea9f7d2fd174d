//! Owns an output that is written piece by piece: complete at the end or not there at all, also when the run is
//! interrupted.

use std::fs::{File, Metadata, OpenOptions};
use std::io::{BufWriter, ErrorKind, Write};
use std::path::{Path, PathBuf};

use anyhow::{Context as _, anyhow};

use super::interrupt::{Interrupt, Unfinished};
use super::{say, writer};

/// An output that is written piece by piece.
pub(crate) struct LongOutput {
    to: To,
    interrupt: Interrupt,
}

/// Where it goes.
enum To {
    /// Standard output.
    Standard(std::io::Stdout),
    /// A device or pipe, written into as it is.
    Device(File),
    /// A file, under a temporary name until it is complete.
    File { out: BufWriter<File>, temporary: PathBuf, place: PathBuf, old: Option<Box<Metadata>>, force: bool },
}

impl LongOutput {
    /// Begins an output; an existing file is replaced only with `force`, an input of the run never.
    pub(crate) fn begin(path: Option<&Path>, force: bool) -> anyhow::Result<Self> {
        let interrupt = Interrupt::watch();
        let Some(path) = path.filter(|path| path.as_os_str() != "-") else {
            if super::closed::is_closed(1) {
                return Err(anyhow!("standard output is closed, so the rows have no place; use `-o FILE`"));
            }
            return Ok(Self { to: To::Standard(std::io::stdout()), interrupt });
        };
        let name = path.display();
        let old = std::fs::metadata(path).ok();
        writer::is_no_place(path, old.as_ref())?;
        if let Some(about) = &old {
            if !about.is_file() {
                let device = OpenOptions::new().write(true).open(path);
                let device = device.with_context(|| format!("{name} could not be written"))?;
                return Ok(Self { to: To::Device(device), interrupt });
            }
            if writer::input_that_is(path, about).is_some() {
                return Err(anyhow!("{name} is an input of this run; give the output another name"));
            }
            if !force {
                return Err(anyhow!(
                    "{name} exists and is kept; give another name, or `--force` to replace it"
                ));
            }
        }
        // Behind a link the file itself is replaced, and the link stays.
        let place = std::fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
        writer::clear_stale(&place);
        let temporary = writer::temporary_beside(&place);
        let mut held = interrupt.hold();
        let file = writer::new_file(&temporary).with_context(|| format!("{name} could not be written"))?;
        *held = Unfinished::File {
            temporary: temporary.clone(),
            place: place.display().to_string(),
            replaced: old.is_some(),
        };
        drop(held);
        let to = To::File { out: BufWriter::new(file), temporary, place, old: old.map(Box::new), force };
        Ok(Self { to, interrupt })
    }

    /// Puts the complete output in its place and says so. An interruption waits for the end of that.
    pub(crate) fn finish(self) -> anyhow::Result<()> {
        let mut held = self.interrupt.hold();
        *held = Unfinished::Nothing;
        let To::File { out, temporary, place, old, force } = self.to else { return Ok(()) };
        let written = out.into_inner().map_err(std::io::IntoInnerError::into_error).and_then(|file| {
            if let Some(old) = &old {
                file.set_permissions(old.permissions())?;
            }
            file.sync_all()
        });
        let placed = written.and_then(|()| {
            if old.is_some() || force {
                std::fs::rename(&temporary, &place)
            } else {
                writer::without_replacing(&temporary, &place)
            }
        });
        let _ = std::fs::remove_file(&temporary);
        match placed {
            Err(fault) if fault.kind() == ErrorKind::AlreadyExists => {
                Err(anyhow!("{} was written by another run in the meantime and is kept", place.display()))
            }
            other => {
                other.with_context(|| {
                    format!("{} could not be written; nothing was left behind", place.display())
                })?;
                writer::sync_folder(&place);
                say::note(&format!("wrote {}", place.display()));
                Ok(())
            }
        }
    }

    /// Takes away what was written so far.
    pub(crate) fn drop_it(self) {
        let mut held = self.interrupt.hold();
        *held = Unfinished::Nothing;
        if let To::File { out, temporary, .. } = self.to {
            drop(out);
            let _ = std::fs::remove_file(temporary);
        }
    }
}

impl Write for LongOutput {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        self.write_all(bytes).map(|()| bytes.len())
    }

    /// Whole rows: an interruption waits until they are out.
    fn write_all(&mut self, bytes: &[u8]) -> std::io::Result<()> {
        match &mut self.to {
            To::Standard(out) => {
                let _held = self.interrupt.hold();
                out.write_all(bytes).and_then(|()| out.flush())
            }
            To::Device(out) => {
                let _held = self.interrupt.hold();
                out.write_all(bytes)
            }
            // A part under a hidden name may end anywhere.
            To::File { out, .. } => out.write_all(bytes),
        }
    }

    fn flush(&mut self) -> std::io::Result<()> {
        match &mut self.to {
            To::Standard(out) => out.flush(),
            To::Device(out) => out.flush(),
            To::File { out, .. } => out.flush(),
        }
    }
}
