//! Owns one item that is there.

use jiff::civil::Date;

use super::Clearing;
use crate::anatomy::Side;
use crate::rules::{Severity, Urgency};

/// One item that is there.
#[derive(Clone, Debug)]
pub struct Present {
    /// Its id in the rules.
    pub item: String,
    /// The side that it was answered for; none = it is the client's, or was answered without a side.
    pub side: Option<Side>,
    /// What it weighs here.
    pub severity: Severity,
    /// How soon somebody has to act.
    pub urgency: Urgency,
    /// When it was asked, if that is dated.
    pub on: Option<Date>,
    /// What was decided on it.
    pub clearing: Clearing,
    /// Whether girths taken now are not used.
    pub postpone: bool,
}
