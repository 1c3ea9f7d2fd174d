//! Owns the arterial values of a leg as recorded; judges nothing.

use jiff::civil::Date;

use crate::input::{Named, Spot, Text};
use crate::quantity::Pressure;
use crate::rules::Role;

/// The stated ankle-brachial pressure index.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Index {
    /// A number, 0 to 2.5.
    Value(f64),
    /// The artery cannot be pressed shut.
    NotCompressible,
}

/// The highest pressure that may be worn.
#[derive(Clone, Debug)]
pub enum Cap {
    /// A pressure.
    Pressure(Pressure),
    /// The upper end of a class of a scheme.
    Class {
        /// The class, with its place.
        class: Named,
        /// The scheme's id, with its place.
        scheme: Named,
    },
}

/// Outcome of a clinical vascular assessment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clinical {
    /// Judged adequate.
    Adequate,
    /// In doubt.
    Doubtful,
    /// Judged inadequate.
    Inadequate,
}

impl Clinical {
    /// The words that files and reports use.
    pub const WORDS: [(&'static str, Self); 3] =
        [("adequate", Self::Adequate), ("doubtful", Self::Doubtful), ("inadequate", Self::Inadequate)];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Adequate => "adequate",
            Self::Doubtful => "doubtful",
            Self::Inadequate => "inadequate",
        }
    }
}

/// Arterial values of one leg.
#[derive(Clone, Debug)]
pub struct Arterial {
    /// When they were taken.
    pub taken_on: Option<Date>,
    /// Stated ankle-brachial pressure index.
    pub abpi: Option<Index>,
    /// Ankle systolic pressure.
    pub ankle_systolic: Option<Pressure>,
    /// The higher brachial systolic pressure.
    pub brachial_systolic: Option<Pressure>,
    /// Toe pressure.
    pub toe: Option<Pressure>,
    /// Stated toe-brachial index, 0 to 2.5.
    pub toe_brachial: Option<f64>,
    /// Transcutaneous oxygen pressure.
    pub tcpo2: Option<Pressure>,
    /// The clinical vascular assessment.
    pub clinical: Option<Clinical>,
    /// Who assessed.
    pub clinical_by: Option<Role>,
    /// What was found.
    pub clinical_found: Option<Text>,
    /// Highest pressure that may be worn.
    pub cap: Option<Cap>,
    /// Place in the file.
    pub spot: Spot,
}

impl Arterial {
    /// Ankle over brachial systolic pressure, where both were taken.
    pub fn quotient(&self) -> Option<f64> {
        let ratio = self.ankle_systolic? / self.brachial_systolic?;
        Some(ratio.get::<uom::si::ratio::ratio>())
    }
}
