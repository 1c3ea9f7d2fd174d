//! Owns the arterial values of a leg as recorded; judges nothing.

use jiff::civil::Date;

use crate::quantity::Pressure;

/// Arterial values.
#[derive(Clone, Debug, Default)]
pub struct Arterial {
    /// When they were taken.
    pub on: Option<Date>,
    /// Stated ankle-brachial pressure index, 0 to 2.5.
    pub abpi: Option<f64>,
    /// Ankle systolic pressure.
    pub ankle_systolic: Option<Pressure>,
    /// The higher brachial systolic pressure.
    pub brachial_systolic: Option<Pressure>,
    /// Toe pressure.
    pub toe: Option<Pressure>,
    /// Transcutaneous oxygen pressure.
    pub tcpo2: Option<Pressure>,
    /// The clinical vascular assessment.
    pub clinical: Option<Clinical>,
    /// Who assessed.
    pub clinical_by: Option<String>,
    /// Highest pressure that the assessment covers.
    pub cap: Option<Pressure>,
}

/// Outcome of a clinical vascular assessment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clinical {
    /// Judged adequate.
    Adequate,
    /// Judged inadequate.
    Inadequate,
}

impl Arterial {
    /// The index: the stated one, else ankle over brachial systolic pressure.
    pub fn index(&self) -> Option<f64> {
        self.abpi.or_else(|| {
            let ratio = self.ankle_systolic? / self.brachial_systolic?;
            Some(ratio.get::<uom::si::ratio::ratio>())
        })
    }
}
