//! Owns under what a check is made: the day, the rules, the schemes.

use jiff::civil::Date;

use crate::garment::Schemes;
use crate::rules::{NumberId, Rules};
use crate::sizing::Limits;

/// Under what a check is made.
#[derive(Clone, Debug)]
pub struct Setting {
    /// The day of the check.
    pub today: Date,
    /// The rules.
    pub rules: Rules,
    /// The pressure schemes.
    pub schemes: Schemes,
}

impl Setting {
    /// A number of the rules.
    pub fn number(&self, id: NumberId) -> f64 {
        self.rules.number(id)
    }

    /// The distances of sizing.
    pub fn limits(&self) -> Limits {
        Limits::of_cm(self.number(NumberId::EdgeMargin), self.number(NumberId::PickMiss))
    }
}
