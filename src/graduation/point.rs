//! Owns one mark as the comparison needs it.

use crate::anatomy::Landmark;
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

/// What is known at a mark.
#[derive(Clone, Copy, Debug)]
pub enum Value {
    /// A pressure in mmHg, with the SD that it does not share with other marks.
    Pressure {
        /// mmHg.
        mmhg: f64,
        /// mmHg.
        sd: f64,
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
