//! Owns what the commands about a record share: its files, the rules, the schemes and the day.

use std::path::PathBuf;

use anyhow::anyhow;
use tapeline::assessment::{Assessment, Opened, Setting, assess, open_files};
use tapeline::input::{FileKind, files_read};

use super::exit::Failure;
use super::files::{Files, What};
use super::options::{Day, Sets, Tables};
use super::{clock, say, sets};

/// The kinds of files that go with a record.
pub(crate) const VISITS: [What; 3] =
    [What::Kind(FileKind::Record), What::Kind(FileKind::Visits), What::VisitTable];

/// The kinds of files that a record is held against, and the record.
pub(crate) const EVERYTHING: [What; 8] = [
    What::Kind(FileKind::Record),
    What::Kind(FileKind::Visits),
    What::VisitTable,
    What::Kind(FileKind::Chart),
    What::SizeTable,
    What::Kind(FileKind::Garment),
    What::Kind(FileKind::Wrap),
    What::Kind(FileKind::Fabric),
];

/// The kinds of files that a pattern is worked out from.
pub(crate) const WITH_FABRIC: [What; 4] = [
    What::Kind(FileKind::Record),
    What::Kind(FileKind::Visits),
    What::VisitTable,
    What::Kind(FileKind::Fabric),
];

/// A record with everything that it is held against.
pub(crate) struct Session {
    /// The files.
    pub(crate) opened: Opened,
    /// Under what they are judged.
    pub(crate) setting: Setting,
    /// Fabric files of the command line.
    fabrics: Vec<PathBuf>,
}

impl Session {
    /// Opens everything; problems of all files are told together.
    pub(crate) fn open(
        paths: &[PathBuf],
        day: &Day,
        told: &Sets,
        tables: Option<&Tables>,
        command: &str,
        accepted: &[What],
    ) -> Result<Self, Failure> {
        let (rules, schemes) = sets::open(told)?;
        let files = Files::read(paths, tables, command, accepted)?;
        let setting = Setting { today: clock::today(day.today), rules, schemes };
        let fabrics = files.names_of(What::Kind(FileKind::Fabric));
        let opened = open_files(files.into_sources(), &setting)?;
        if command != "pattern" {
            say_unused(&fabrics);
        }
        if opened.record().is_none() {
            return Err(anyhow!(
                "no record is named; a record starts with `tapeline: record/1`, and `tapeline new record` writes one"
            )
            .into());
        }
        Ok(Self { opened, setting, fabrics })
    }

    /// How a file written to `path` names the fabric of the command line: relative to its own folder.
    pub(crate) fn fabric_beside(&self, path: &std::path::Path) -> Result<String, Failure> {
        let fabric = self.fabrics.first().ok_or_else(|| anyhow!("no fabric is named"))?;
        let parent =
            |one: &std::path::Path| one.parent().map(std::path::Path::to_path_buf).unwrap_or_default();
        if parent(fabric) == parent(path) {
            let name = fabric.file_name().map(|name| name.to_string_lossy().into_owned());
            return Ok(name.unwrap_or_else(|| fabric.display().to_string()));
        }
        let full = std::fs::canonicalize(fabric).unwrap_or_else(|_| fabric.clone());
        Ok(full.display().to_string())
    }

    /// The whole check.
    pub(crate) fn assess(&self) -> Result<Assessment, Failure> {
        assess(&self.opened, &self.setting).ok_or_else(|| anyhow!("no record is named").into())
    }
}

/// A fabric is used where a chart or garment names it, and was then read twice.
fn say_unused(fabrics: &[PathBuf]) {
    let full = |path: &PathBuf| std::fs::canonicalize(path).unwrap_or_else(|_| path.clone());
    let read: Vec<PathBuf> = files_read().iter().map(full).collect();
    for fabric in fabrics {
        if read.iter().filter(|one| **one == full(fabric)).count() < 2 {
            say::note(&format!(
                "{}: no chart or garment of this run names this fabric; it was not used",
                fabric.display()
            ));
        }
    }
}
