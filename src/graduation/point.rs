//! Owns one mark as the comparison needs it.

use crate::anatomy::Landmark;
use crate::garment::MOST_FABRICS;
use crate::quantity::{Girth, Position};

/// What the comparison rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GraduationBasis {
    /// Sensor readings under the garment.
    Readings,
    /// Relaxed girths and a fabric curve.
    Fabric,
    /// Relaxed girths or flat widths alone.
    Stretch,
}

impl GraduationBasis {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Readings => "readings",
            Self::Fabric => "fabric",
            Self::Stretch => "stretch",
        }
    }
}

/// The part of a pressure that one fabric brings, and how sure its tension is.
#[derive(Clone, Copy, Debug, Default)]
pub struct Share {
    /// mmHg.
    pub mmhg: f64,
    /// Relative SD of the fabric's tension, a fraction.
    pub sd: f64,
}

/// What each fabric brings; the place is the fabric's number.
pub type Shares = [Share; MOST_FABRICS];

/// SD of `high − factor·low` as far as unlike errors of several fabrics can turn its sign, mmHg.
///
/// One fabric scales both alike and cannot turn it. With d the parts, D their sum and s their
/// relative SDs the variance is Σ s²d(d − D): nothing for one fabric or where all parts point one
/// way, and the full spread Σ s²d² where they cancel (derived).
pub fn unlike_fabrics_sd(high: &Shares, low: &Shares, factor: f64) -> f64 {
    let parts =
        || high.iter().zip(low).map(|(high, low)| (high.mmhg - factor * low.mmhg, high.sd.max(low.sd)));
    let sum: f64 = parts().map(|(part, _)| part).sum();
    parts().map(|(part, sd)| sd * sd * part * (part - sum)).sum::<f64>().max(0.0).sqrt()
}

/// What is known at a mark.
#[derive(Clone, Copy, Debug)]
pub enum Value {
    /// A pressure in mmHg, with the SD that it does not share with other marks.
    Pressure {
        /// mmHg.
        mmhg: f64,
        /// By tape and ruler, or of the reading, mmHg.
        sd: f64,
        /// What each fabric brings; all zero for readings.
        fabrics: Shares,
    },
    /// A stretch: limb girth and relaxed girth with their SDs, cm.
    Stretch {
        /// Limb girth.
        girth: Girth,
        /// Relaxed girth.
        relaxed: Girth,
        /// SD of the limb girth, cm.
        sd_girth: f64,
        /// SD of the relaxed girth, cm.
        sd_relaxed: f64,
    },
    /// Nothing: the fabric was not tested that far.
    NotEstimated,
}

/// One mark.
#[derive(Clone, Copy, Debug)]
pub struct Point {
    /// The landmark.
    pub landmark: Landmark,
    /// Where along the limb.
    pub at: Position,
    /// What is known there.
    pub value: Value,
}
