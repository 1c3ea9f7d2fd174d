//! Owns the writing of files: complete or not at all, never over a file that has to be kept.
//!
//! A file is written beside its place under a temporary name, synced, and put there by an operation
//! that never replaces (a link, else a rename of that kind); with `--force` by a rename that does.

use std::fs::{File, Metadata, OpenOptions};
use std::io::{ErrorKind, Write as _};
use std::path::{Path, PathBuf};

use anyhow::{Context as _, anyhow};

use super::{say, stream};

/// Writes bytes to `path` (`-` is standard output) and says so; an existing file is replaced only with
/// `force`, an input of the run never.
pub(crate) fn write(bytes: &[u8], path: &Path, force: bool) -> anyhow::Result<()> {
    if path.as_os_str() == "-" {
        return stream::write(bytes);
    }
    let name = path.display();
    let there = std::fs::symlink_metadata(path).ok();
    let behind = std::fs::metadata(path).ok();
    is_no_place(path, behind.as_ref())?;
    let linked = there.as_ref().is_some_and(Metadata::is_symlink);
    if behind.as_ref().is_some_and(|about| !about.is_file()) {
        return into_device(bytes, path);
    }
    if let Some(input) = behind.as_ref().and_then(|about| input_that_is(path, about)) {
        return Err(anyhow!(
            "{name} is an input of this run, {}; give the output another name",
            input.display()
        ));
    }
    if behind.is_some() && !force {
        return Err(anyhow!("{name} exists and is kept; give another name, or `--force` to replace it"));
    }
    // Behind a link the file itself is replaced, and the link stays.
    let place = if linked {
        std::fs::canonicalize(path).unwrap_or_else(|_| path.to_owned())
    } else {
        path.to_owned()
    };
    put(bytes, &place, behind.as_ref(), force)?;
    if linked {
        say::note(&format!("wrote {name} (a link; the file behind it is {})", place.display()));
    } else {
        say::note(&format!("wrote {name}"));
    }
    Ok(())
}

/// Refuses what no file can be put at: a folder, or a link to nothing; `behind` is what is there, behind a link.
pub(crate) fn is_no_place(path: &Path, behind: Option<&Metadata>) -> anyhow::Result<()> {
    let name = path.display();
    if path.file_name().is_none() || behind.is_some_and(Metadata::is_dir) {
        return Err(anyhow!("{name} is a folder; name a file in it"));
    }
    let linked = std::fs::symlink_metadata(path).is_ok_and(|about| about.is_symlink());
    if linked && behind.is_none() {
        return Err(anyhow!("{name} is a link to a file that is not there; name that file itself"));
    }
    Ok(())
}

/// Saves a file that this run is writing, whole, without a word; the one before is replaced.
pub(crate) fn save(bytes: &[u8], path: &Path) -> anyhow::Result<()> {
    let old = std::fs::metadata(path).ok();
    put(bytes, path, old.as_ref(), false)
}

/// A device or pipe is written into, never replaced.
fn into_device(bytes: &[u8], path: &Path) -> anyhow::Result<()> {
    let written = OpenOptions::new().write(true).open(path).and_then(|mut file| file.write_all(bytes));
    match written {
        Err(fault) if fault.kind() == ErrorKind::BrokenPipe => Ok(()),
        other => other.with_context(|| format!("{} could not be written", path.display())),
    }
}

/// The file that this run has read and that is the same as `path`.
pub(super) fn input_that_is(path: &Path, about: &Metadata) -> Option<PathBuf> {
    let full = std::fs::canonicalize(path).ok();
    tapeline::input::files_read().into_iter().find(|read| {
        is_same(read, about)
            || full.as_ref().is_some_and(|full| std::fs::canonicalize(read).ok().as_ref() == Some(full))
    })
}

#[cfg(unix)]
fn is_same(read: &Path, about: &Metadata) -> bool {
    use std::os::unix::fs::MetadataExt as _;
    std::fs::metadata(read).is_ok_and(|one| one.dev() == about.dev() && one.ino() == about.ino())
}

#[cfg(not(unix))]
fn is_same(_: &Path, _: &Metadata) -> bool {
    false
}

/// Puts the whole file at `place`; with `old` or `force` it replaces what stands there, and keeps the old one's mode.
fn put(bytes: &[u8], place: &Path, old: Option<&Metadata>, force: bool) -> anyhow::Result<()> {
    let name = place.display();
    clear_stale(place);
    let temporary = temporary_beside(place);
    let written = new_file(&temporary).and_then(|mut file| {
        file.write_all(bytes)?;
        if let Some(old) = old {
            file.set_permissions(old.permissions())?;
        }
        file.sync_all()
    });
    let placed = written.and_then(|()| {
        if old.is_some() || force {
            std::fs::rename(&temporary, place)
        } else {
            without_replacing(&temporary, place)
        }
    });
    // After a link the temporary name is left over; after a failure nothing may be.
    let _ = std::fs::remove_file(&temporary);
    match placed {
        Err(fault) if fault.kind() == ErrorKind::AlreadyExists => Err(anyhow!(
            "{name} was written by another run in the meantime and is kept; nothing of this run was left behind"
        )),
        other => {
            other.with_context(|| format!("{name} could not be written; nothing was left behind"))?;
            sync_folder(place);
            Ok(())
        }
    }
}

/// A new file for health data: its owner may read and write it, or less where the umask says so.
pub(super) fn new_file(path: &Path) -> std::io::Result<File> {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt as _;
        options.mode(0o600);
    }
    options.open(path)
}

pub(super) fn without_replacing(from: &Path, to: &Path) -> std::io::Result<()> {
    match std::fs::hard_link(from, to) {
        Err(fault) if fault.kind() != ErrorKind::AlreadyExists => rename_without_replacing(from, to, fault),
        other => other,
    }
}

#[cfg(target_os = "linux")]
fn rename_without_replacing(from: &Path, to: &Path, _: std::io::Error) -> std::io::Result<()> {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    renameat_with(CWD, from, CWD, to, RenameFlags::NOREPLACE).map_err(std::io::Error::from)
}

#[cfg(not(target_os = "linux"))]
fn rename_without_replacing(_: &Path, _: &Path, fault: std::io::Error) -> std::io::Result<()> {
    Err(fault)
}

const PART: &str = ".tapeline-part";

/// `.sheet.pdf.1234.tapeline-part` beside `sheet.pdf`; long names are cut, so that it stays a file name.
pub(super) fn temporary_beside(place: &Path) -> PathBuf {
    place.with_file_name(format!("{}{}{PART}", part_stem(place), std::process::id()))
}

fn part_stem(place: &Path) -> String {
    let name = place.file_name().unwrap_or_default().to_string_lossy();
    let cut: String = name.chars().take(50).collect();
    format!(".{cut}.")
}

/// Takes away what a run that was killed has left of the same file.
pub(super) fn clear_stale(place: &Path) {
    let folder = place.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let stem = part_stem(place);
    let Ok(entries) = std::fs::read_dir(folder) else { return };
    for entry in entries.flatten() {
        let name = entry.file_name();
        let Some(owner) = name.to_str().and_then(|name| name.strip_prefix(&stem)?.strip_suffix(PART)) else {
            continue;
        };
        if owner.parse::<u32>().is_ok_and(|process| !is_running(process)) {
            let _ = std::fs::remove_file(entry.path());
        }
    }
}

/// Whether a process is running; where that cannot be told, it counts as running.
fn is_running(process: u32) -> bool {
    let known = Path::new("/proc/self").exists();
    !known || Path::new(&format!("/proc/{process}")).exists()
}

/// The name is safe only once its folder is written; some systems do not offer it.
pub(super) fn sync_folder(place: &Path) {
    let folder = place.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    if let Ok(folder) = File::open(folder) {
        let _ = folder.sync_all();
    }
}

/// A file name that every system takes, made of `text`: letters, figures, `-` and `_` stay, anything else
/// is a dash; reserved names get a dash in front; at most 80 characters.
pub(crate) fn safe_name(text: &str) -> String {
    /// Names of devices on one system (its documentation; published).
    const RESERVED: [&str; 4] = ["con", "prn", "aux", "nul"];
    let dashed: String =
        text.chars().map(|c| if c.is_alphanumeric() || c == '_' { c } else { '-' }).collect();
    let mut name: String = dashed.trim_matches('-').chars().take(80).collect();
    while name.len() > 180 {
        name.pop();
    }
    let lower = name.to_lowercase();
    let numbered = ["com", "lpt"].iter().any(|port| {
        lower
            .strip_prefix(port)
            .is_some_and(|rest| rest.len() == 1 && rest.chars().all(|c| c.is_ascii_digit()))
    });
    if name.is_empty() {
        "client".to_owned()
    } else if RESERVED.contains(&lower.as_str()) || numbered {
        format!("_{name}")
    } else {
        name
    }
}
