//! Owns the closed list of file kinds, each with its first line and its keys.

use super::keys::{self, Block};

/// A kind of input file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FileKind {
    /// One visit of one client.
    Record,
    /// A size chart.
    Chart,
    /// One garment, or several worn together.
    Garment,
    /// A wrap.
    Wrap,
    /// A fabric.
    Fabric,
    /// A pressure scheme.
    Scheme,
    /// A set of rules.
    Rules,
    /// A list of visits.
    Visits,
}

impl FileKind {
    /// Every kind.
    pub const ALL: [Self; 8] = [
        Self::Record,
        Self::Chart,
        Self::Garment,
        Self::Wrap,
        Self::Fabric,
        Self::Scheme,
        Self::Rules,
        Self::Visits,
    ];

    /// The word for it, as in `print schema record`.
    pub fn word(self) -> &'static str {
        match self {
            Self::Record => "record",
            Self::Chart => "chart",
            Self::Garment => "garment",
            Self::Wrap => "wrap",
            Self::Fabric => "fabric",
            Self::Scheme => "scheme",
            Self::Rules => "rules",
            Self::Visits => "visits",
        }
    }

    /// What its first key says: `record/1`.
    pub fn tag(self) -> &'static str {
        match self {
            Self::Record => "record/1",
            Self::Chart => "chart/1",
            Self::Garment => "garment/1",
            Self::Wrap => "wrap/1",
            Self::Fabric => "fabric/1",
            Self::Scheme => "scheme/1",
            Self::Rules => "rules/1",
            Self::Visits => "visits/1",
        }
    }

    /// How a sentence names it: `a record`.
    pub fn spoken(self) -> &'static str {
        match self {
            Self::Record => "a record",
            Self::Chart => "a size chart",
            Self::Garment => "a garment file",
            Self::Wrap => "a wrap file",
            Self::Fabric => "a fabric file",
            Self::Scheme => "a scheme file",
            Self::Rules => "a rules file",
            Self::Visits => "a list of visits",
        }
    }

    /// Reads what the first key says, with its version (`record/1`).
    pub fn parse(tag: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.tag() == tag)
    }

    /// Reads the word alone (`record`).
    pub fn parse_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.word() == word)
    }

    /// The keys of its files.
    pub fn keys(self) -> &'static Block {
        match self {
            Self::Record => &keys::RECORD,
            Self::Chart => &keys::CHART,
            Self::Garment => &keys::GARMENT,
            Self::Wrap => &keys::WRAP,
            Self::Fabric => &keys::FABRIC,
            Self::Scheme => &keys::SCHEME,
            Self::Rules => &keys::RULES,
            Self::Visits => &keys::VISITS,
        }
    }
}
