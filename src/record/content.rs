//! Owns the record's content.

use std::collections::BTreeMap;

use jiff::civil::Date;

use super::{Arterial, Cleared, Mark, Observed, Prescribed, Reading, ScreeningBlock};
use crate::anatomy::{Between, Landmark, Limb, Side};
use crate::input::Spot;
use crate::quantity::Span;

/// Adult or child.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AgeBand {
    /// Adult bands hold.
    Adult,
    /// Adult bands are off; always reviewed.
    Child,
}

/// Which limb is affected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Affected {
    /// One side.
    One(Side),
    /// Both: no excess against the other side.
    Both,
    /// Neither.
    Neither,
}

/// The zero of positions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// Wrist crease.
    Wrist,
    /// Ulnar styloid.
    Styloid,
    /// Tip of the middle finger.
    Fingertip,
    /// Heel.
    Heel,
    /// Floor, standing.
    Floor,
}

impl Origin {
    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Wrist => "wrist",
            Self::Styloid => "styloid",
            Self::Fingertip => "fingertip",
            Self::Heel => "heel",
            Self::Floor => "floor",
        }
    }

    /// The limb it belongs to.
    pub fn limb(self) -> Limb {
        match self {
            Self::Wrist | Self::Styloid | Self::Fingertip => Limb::Arm,
            Self::Heel | Self::Floor => Limb::Leg,
        }
    }
}

/// How volume is worked out from girths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum VolumeMethod {
    /// A cut cone between each two marks.
    Frustum,
    /// A disc around each mark.
    Disc,
}

/// Places of the keys that a second record is held against.
#[derive(Clone, Copy, Debug)]
pub struct RecordSpots {
    /// Of `client`.
    pub client: Spot,
    /// Of `limb`.
    pub limb: Spot,
    /// Of `measured`.
    pub measured: Spot,
}

/// One visit's measurements of one limb, checked.
#[derive(Clone, Debug)]
pub struct Record {
    /// The clinic's reference code, never a name.
    pub client: String,
    /// The day of measuring.
    pub measured: Date,
    /// The local time of measuring, as written.
    pub measured_at: Option<String>,
    /// Who measured.
    pub measured_by: Option<String>,
    /// Adult or child.
    pub age_band: AgeBand,
    /// Arm or leg.
    pub limb: Limb,
    /// Left or right.
    pub side: Side,
    /// Which limb is affected.
    pub affected: Affected,
    /// Posture while measuring.
    pub posture: Option<String>,
    /// The zero of positions.
    pub positions_from: Origin,
    /// The marks, distal to proximal.
    pub marks: Vec<Mark>,
    /// The other limb's marks, distal to proximal.
    pub other_limb: Option<Vec<Mark>>,
    /// Lengths between landmarks.
    pub lengths: BTreeMap<Between, Span>,
    /// What was seen.
    pub observed: Observed,
    /// What was prescribed.
    pub prescribed: Option<Prescribed>,
    /// Screening answers as written.
    pub screening: ScreeningBlock,
    /// Arterial values (leg).
    pub arterial: Option<Arterial>,
    /// Known material allergies; none = not asked, empty = asked, none.
    pub allergies: Option<Vec<String>>,
    /// Landmarks whose unusual girth was measured again and holds.
    pub confirmed: Vec<Landmark>,
    /// Reviews cleared.
    pub cleared: Vec<Cleared>,
    /// Sensor readings.
    pub readings: Vec<Reading>,
    /// Body weight, kg.
    pub weight_kg: Option<f64>,
    /// Volume method.
    pub volume_method: VolumeMethod,
    /// Home routines that were taught.
    pub taught: Vec<String>,
    /// When the present garment was handed out.
    pub garment_given: Option<Date>,
    /// Places in the file.
    pub spots: RecordSpots,
}

impl Record {
    /// The mark of a landmark.
    pub fn mark(&self, landmark: Landmark) -> Option<&Mark> {
        self.marks.iter().find(|mark| mark.landmark == Some(landmark))
    }
}
