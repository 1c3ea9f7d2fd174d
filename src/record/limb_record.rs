//! Owns what a record states of one limb.

use std::collections::BTreeMap;

use jiff::civil::Date;

use super::{Arterial, Cleared, GarmentInUse, Mark, Observed, Origin, Prescribed, Reading, Screening};
use crate::anatomy::{Between, Landmark, Side};
use crate::input::{Named, Spot};
use crate::quantity::Span;

/// One limb of a record. Under `limb: both arms` each side has its own block; otherwise these keys
/// stand at the top of the file.
#[derive(Clone, Debug)]
pub struct LimbRecord {
    /// Left or right.
    pub side: Side,
    /// The marks, distal to proximal.
    pub marks: Vec<Mark>,
    /// The other limb's marks, distal to proximal, where they were written as `other_limb`.
    pub other_limb: Option<Vec<Mark>>,
    /// Lengths between landmarks as stated; `floor to X` under [`super::LengthName`].
    pub lengths: BTreeMap<LengthName, (Span, Spot)>,
    /// What was seen.
    pub observed: Observed,
    /// What was prescribed for this limb, where it differs from the client's.
    pub prescribed: Option<Prescribed>,
    /// Screening answers of this side (under `limb: both`); the client's hold beside them.
    pub screening: Screening,
    /// Arterial values (leg).
    pub arterial: Option<Arterial>,
    /// Questions answered by their word, for this side.
    pub confirmed: Vec<Named>,
    /// Findings cleared for this side.
    pub cleared: Vec<Cleared>,
    /// Sensor readings.
    pub readings: Vec<Reading>,
    /// Garments given for this limb.
    pub garments: Vec<GarmentInUse>,
    /// Dates of infections of this limb.
    pub infections: Vec<Date>,
}

impl LimbRecord {
    /// The mark of a landmark.
    pub fn mark(&self, landmark: Landmark) -> Option<&Mark> {
        self.marks.iter().find(|mark| mark.landmark == Some(landmark))
    }

    /// A length as the positions of the marks give it; `floor to X` only where positions are from the floor.
    pub fn length_by_positions(&self, name: LengthName, origin: Origin) -> Option<Span> {
        let at = |landmark| self.mark(landmark).map(|mark| mark.at.tenths());
        let tenths = match name {
            LengthName::FromFloor(to) => (origin == Origin::Floor).then(|| at(to)).flatten()?,
            LengthName::Between(between) => at(between.to)? - at(between.from)?,
        };
        Span::from_tenths(tenths)
    }

    /// A length as stated, else by the positions; true where it is from the positions.
    pub fn length(&self, name: LengthName, origin: Origin) -> Option<(Span, bool)> {
        let stated = self.lengths.get(&name).map(|(span, _)| (*span, false));
        stated.or_else(|| self.length_by_positions(name, origin).map(|span| (span, true)))
    }
}

/// What a length runs between.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LengthName {
    /// From the floor to a landmark.
    FromFloor(Landmark),
    /// Between two landmarks.
    Between(Between),
}

impl LengthName {
    /// `floor to below-knee`, `wrist to axilla`.
    pub fn name(self) -> String {
        match self {
            Self::FromFloor(to) => format!("floor to {}", to.name()),
            Self::Between(between) => between.name(),
        }
    }
}
