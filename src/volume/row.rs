//! Owns the row of marks that a limb's volume is worked out from, and the marks on hand or foot,
//! which are left out of it.
//!
//! Source: hand and foot are left out of limb volume (published: Lymphoedema Framework 2006).

use super::limb_volume::{common_spacing, discs};
use super::{LimbVolume, Place, Station, volume_of};
use crate::anatomy::Limb;
use crate::quantity::Girth;
use crate::record::{Mark, Origin, VolumeMethod};
use crate::rules::TapeSd;

/// One mark of a row.
#[derive(Clone, Copy, Debug)]
pub(super) struct RowMark {
    pub(super) place: Place,
    pub(super) girth: Girth,
    pub(super) station: Station,
    /// How often it was read.
    pub(super) repeats: usize,
}

/// The marks of one limb from the reference on, distal to proximal; those beyond it for themselves.
#[derive(Clone, Debug, Default)]
pub(super) struct Row {
    pub(super) marks: Vec<RowMark>,
    pub(super) extremity: Vec<RowMark>,
}

impl Row {
    /// Splits the marks of a limb at its reference: by landmark or, for serial marks, by position.
    pub(super) fn of(marks: &[Mark], limb: Limb, origin: Origin, tape: &TapeSd) -> Self {
        let reference = limb.reference();
        let stated = marks.iter().find(|mark| mark.landmark == Some(reference)).map(|mark| mark.at.tenths());
        // From the wrist, whatever lies before zero is hand; from fingertip, heel or floor nothing is
        // known of a serial mark without the reference.
        let start = stated.or(match origin {
            Origin::Wrist | Origin::Styloid => Some(0),
            Origin::Fingertip | Origin::Heel | Origin::Floor => None,
        });
        let mut row = Self::default();
        for mark in marks {
            let beyond = match mark.landmark {
                Some(landmark) => landmark.on_extremity(),
                None => start.is_some_and(|start| mark.at.tenths() < start),
            };
            let girth = mark.girth();
            let repeats = mark.readings();
            let sd_cm = mark.sd_cm(limb, tape);
            let one = RowMark {
                place: mark.landmark.map_or(Place::At(mark.at), Place::Landmark),
                girth,
                station: Station { at_cm: mark.at.cm(), girth_cm: girth.cm(), sd_cm },
                repeats,
            };
            if beyond { row.extremity.push(one) } else { row.marks.push(one) }
        }
        row
    }

    /// The stations of the row.
    pub(super) fn stations(&self) -> Vec<Station> {
        self.marks.iter().map(|mark| mark.station).collect()
    }

    /// Its volume.
    pub(super) fn volume(&self, method: VolumeMethod) -> Option<LimbVolume> {
        volume_of(method, &self.stations())
    }

    /// Whether both rows have the same places in the same order; positions under a landmark may differ.
    pub(super) fn same_places(&self, other: &Self) -> bool {
        self.marks.len() == other.marks.len()
            && self.marks.iter().zip(&other.marks).all(|(one, other)| one.place == other.place)
    }

    /// Where the joint's mark stands, if there are marks on both sides of it.
    pub(super) fn joint(&self, limb: Limb) -> Option<usize> {
        let joint = Place::Landmark(limb.joint());
        self.marks
            .iter()
            .position(|mark| mark.place == joint)
            .filter(|at| *at > 0 && at + 1 < self.marks.len())
    }

    /// The volumes below and above the mark at `joint`; a disc around it is cut in half, so that both
    /// add up to the whole.
    pub(super) fn split(&self, joint: usize, method: VolumeMethod) -> Option<[LimbVolume; 2]> {
        let stations = self.stations();
        let (below, above) = (stations.get(..=joint)?, stations.get(joint..)?);
        match method {
            VolumeMethod::Frustum => Some([volume_of(method, below)?, volume_of(method, above)?]),
            VolumeMethod::Disc => {
                let height = common_spacing(&stations)?;
                let shares = |count: usize, half: usize| -> Vec<f64> {
                    (0..count).map(|at| if at == half { 0.5 } else { 1.0 }).collect()
                };
                let lower = discs(height, below, &shares(below.len(), joint));
                Some([lower, discs(height, above, &shares(above.len(), 0))])
            }
        }
    }
}
