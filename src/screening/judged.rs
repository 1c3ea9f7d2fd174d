//! Owns one arterial value, judged.

use jiff::civil::Date;

use super::Clearing;
use crate::record::Clinical;
use crate::rules::{ArterialValue, Severity};

/// How old arterial values are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Age {
    /// New enough.
    Fresh(Date),
    /// Old enough for a caution.
    Old(Date),
    /// Too old to pass.
    RunOut(Date),
    /// Dated ahead of today: they pass nothing.
    Ahead(Date),
    /// Without a date: they pass nothing.
    Undated,
}

impl Age {
    /// Whether a value of that age may pass.
    pub fn may_pass(self) -> bool {
        matches!(self, Self::Fresh(_) | Self::Old(_))
    }

    /// The date.
    pub fn date(self) -> Option<Date> {
        match self {
            Self::Fresh(on) | Self::Old(on) | Self::RunOut(on) | Self::Ahead(on) => Some(on),
            Self::Undated => None,
        }
    }
}

/// The figure that was judged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ArterialFigure {
    /// An index as stated.
    Index(f64),
    /// An index worked out from ankle over brachial pressure.
    Quotient(f64),
    /// An artery that cannot be pressed shut.
    NotCompressible,
    /// A pressure, mmHg.
    Mmhg(f64),
    /// A clinical assessment.
    Assessed(Clinical),
}

/// One arterial value, judged.
#[derive(Clone, Debug)]
pub struct JudgedValue {
    /// Which value; its word is the finding's id.
    pub value: ArterialValue,
    /// The figure.
    pub figure: ArterialFigure,
    /// What it weighs; none = it passes by itself.
    pub severity: Option<Severity>,
    /// The place of the limit among the rules' arterial limits; none where it passes or is an assessment.
    pub rule: Option<usize>,
    /// What was decided on it.
    pub clearing: Clearing,
}
