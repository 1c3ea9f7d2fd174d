//! Owns what someone named has decided on a finding.

use jiff::civil::Date;

use crate::rules::Role;

/// Who cleared a finding.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClearedBy {
    /// The role.
    pub role: Role,
    /// Why.
    pub reason: String,
    /// When.
    pub on: Date,
    /// Until when it holds.
    pub until: Option<Date>,
    /// The protocol, if it was cleared by one.
    pub protocol: Option<String>,
}

/// What has been decided.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Decided {
    /// By nobody, or in vain.
    No,
    /// Cleared.
    Cleared(ClearedBy),
    /// Refused; it stays.
    Refused(ClearedBy),
}
