//! Owns the answers as written; which items exist and what they mean is decided in `screening`.

use jiff::civil::Date;

use crate::input::{Named, YesNo};

/// What was seen on the limb.
#[derive(Clone, Debug, Default)]
pub struct Observed {
    /// Is the hand or are the fingers swollen?
    pub hand_swelling: Option<YesNo>,
    /// Does the skin pit?
    pub pitting: Option<YesNo>,
    /// Deep folds?
    pub folds: Option<YesNo>,
    /// Is the shape distorted?
    pub distortion: Option<YesNo>,
}

impl Observed {
    /// The answer to a question by its key; none where it is not answered or no such key is known.
    pub fn get(&self, key: &str) -> Option<YesNo> {
        match key {
            "hand_swelling" => self.hand_swelling,
            "pitting" => self.pitting,
            "folds" => self.folds,
            "distortion" => self.distortion,
            _ => None,
        }
    }
}

/// The screening block.
#[derive(Clone, Debug, Default)]
pub struct ScreeningBlock {
    /// When it was asked.
    pub asked_on: Option<Date>,
    /// Who asked.
    pub by: Option<String>,
    /// Groups answered with no as a whole.
    pub none_of: Vec<Named>,
    /// Items answered yes.
    pub yes: Vec<Named>,
    /// Items answered no.
    pub no: Vec<Named>,
    /// Items answered unknown.
    pub unknown: Vec<Named>,
}

/// A review finding that someone named has cleared.
#[derive(Clone, Debug)]
pub struct Cleared {
    /// Which screening item or arterial finding.
    pub item: Named,
    /// Role of the person.
    pub role: Named,
    /// Why.
    pub reason: String,
    /// When.
    pub on: Date,
}
