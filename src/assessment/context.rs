//! Owns what the check of a limb rests on.

use super::Setting;
use super::wanted::WantedPressure;
use crate::record::{LimbRecord, Record};

/// A limb and all that its charts are held against.
#[expect(clippy::struct_excessive_bools, reason = "four separate facts of one limb")]
pub struct LimbContext<'a> {
    /// Under what the check is made.
    pub setting: &'a Setting,
    /// The record.
    pub record: &'a Record,
    /// The limb.
    pub limb: &'a LimbRecord,
    /// Its place in the report.
    pub index: usize,
    /// What was prescribed for it.
    pub wanted: Option<WantedPressure>,
    /// Whether girths are not to be used now (an active infection).
    pub postponed: bool,
    /// Whether folds or distortion ask for made to measure.
    pub made_to_measure: bool,
    /// Whether hand or foot is swollen.
    pub extremity_swollen: bool,
    /// The highest pressure allowed on this leg, mmHg.
    pub cap_mmhg: Option<f64>,
    /// What clears findings on this limb.
    pub clearings: super::Clearings<'a>,
    /// Whether the run holds one garment only, so that a reading need not name it.
    pub only_garment: bool,
}
