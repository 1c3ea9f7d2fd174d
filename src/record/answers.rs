//! Owns the answers as written; which items exist and what they mean is decided in `screening`.

use jiff::civil::Date;

use super::Cap;
use crate::input::{Named, Spot, Text, YesNo};
use crate::rules::Role;

/// How the skin keeps a dent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pitting {
    /// None.
    None,
    /// A little.
    Minor,
    /// Strong.
    Strong,
    /// Asked, and not known.
    Unknown,
}

/// What was seen on one limb; absent = not answered.
#[derive(Clone, Debug, Default)]
pub struct Observed {
    /// Does the skin pit?
    pub pitting: Option<Pitting>,
    /// Folds?
    pub folds: Option<YesNo>,
    /// Is the shape distorted?
    pub distortion: Option<YesNo>,
    /// Is the hand (arm) or the foot (leg) swollen? `hand_swelling`, `foot_swelling`.
    pub extremity_swelling: Option<YesNo>,
    /// Does the swelling go beyond the garment (breast, trunk, genitals)?
    pub swelling_beyond: Option<YesNo>,
}

/// A screening block: groups or items.
#[derive(Clone, Debug, Default)]
pub struct Screening {
    /// When it was asked.
    pub asked_on: Option<Date>,
    /// Who asked.
    pub by: Option<Text>,
    /// A re-order: nothing has changed since the record of that day.
    pub unchanged_since: Option<(Date, Spot)>,
    /// Answered no: items, or groups for their items that are not named.
    pub absent: Vec<Named>,
    /// Answered yes.
    pub present: Vec<Named>,
    /// Asked, and not known: items or groups.
    pub unknown: Vec<Named>,
    /// Groups (or items) with a date of their own.
    pub asked: Vec<(Named, Date)>,
}

/// What was decided by the one who may clear.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClearDecision {
    /// It may go on.
    Cleared,
    /// It may not.
    Refused,
}

/// A protocol that a clearing follows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ByProtocol {
    /// `protocol` and its name.
    Named(Text),
    /// `protocol` alone: it names none.
    Unnamed,
}

impl ByProtocol {
    /// Said behind `by`.
    pub fn spoken(&self) -> String {
        match self {
            Self::Named(text) => text.to_string(),
            Self::Unnamed => "a protocol that is not named".to_owned(),
        }
    }
}

/// A finding that someone named has decided on.
#[derive(Clone, Debug)]
pub struct Cleared {
    /// Which screening item or finding.
    pub item: Named,
    /// Who.
    pub role: Role,
    /// How.
    pub decision: ClearDecision,
    /// Why.
    pub reason: Text,
    /// When.
    pub cleared_on: Date,
    /// Until when; none = the rules' months.
    pub until: Option<Date>,
    /// The protocol it was cleared by (`by: protocol NAME`); none = in person.
    pub by_protocol: Option<ByProtocol>,
    /// Highest pressure that the clearing covers.
    pub cap: Option<Cap>,
    /// When the client was referred on (podiatry by protocol).
    pub referred_on: Option<Date>,
    /// Place in the file.
    pub spot: Spot,
}
