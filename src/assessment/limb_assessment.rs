//! Owns what is worked out for one limb.

use super::wanted::WantedPressure;
use super::{ChartAssessment, Outcome};
use crate::anatomy::Side;
use crate::screening::Screened;
use crate::volume::VisitVolume;

/// One limb, worked out.
#[derive(Clone, Debug)]
pub struct LimbAssessment {
    /// Left or right.
    pub side: Side,
    /// Its outcome; none without charts and with nothing against a fitting.
    pub outcome: Option<Outcome>,
    /// Its screening.
    pub screened: Screened,
    /// The pressure prescribed for it.
    pub wanted: Option<WantedPressure>,
    /// Its charts, in the order given.
    pub charts: Vec<ChartAssessment>,
    /// Its volumes.
    pub volume: VisitVolume,
    /// The highest pressure allowed, mmHg.
    pub cap_mmhg: Option<f64>,
}
