//! Owns what the commands about a record share: its files, rules, schemes and the day.

use std::path::PathBuf;

use jiff::civil::Date;

use super::case::{CHECK_KINDS, Case};
use super::clock;
use super::exit::Failure;
use super::files::Files;
use super::options::{Day, Sets, Tables};
use super::setting::Setting;

/// A record with everything that it is held against.
pub(crate) struct Session {
    /// The record with what goes with it.
    pub(crate) case: Case,
    /// Rules and schemes.
    pub(crate) setting: Setting,
    /// The day.
    pub(crate) today: Date,
}

impl Session {
    /// Opens everything; problems of all files are told together.
    pub(crate) fn open(
        files: &[PathBuf],
        day: &Day,
        sets: &Sets,
        tables: Option<&Tables>,
        command: &str,
    ) -> Result<Self, Failure> {
        let setting = Setting::open(sets)?;
        let files = Files::read(files, tables, command, &CHECK_KINDS)?;
        let case = Case::open(files, &setting.schemes)?;
        Ok(Self { case, setting, today: clock::today(day.today) })
    }
}
