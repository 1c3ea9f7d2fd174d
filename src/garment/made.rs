//! Owns one garment as it lies on the table.

use super::{Claim, Fabric, Relaxed};
use crate::anatomy::{Landmark, Limb};
use crate::input::Text;

/// The band at a garment's upper end.
#[derive(Clone, Debug)]
pub struct TopEdge {
    /// Its girth when relaxed.
    pub relaxed: Relaxed,
    /// Its fabric; none = the garment's.
    pub fabric: Option<Fabric>,
    /// Layers of it; the garment's where the file states none.
    pub layers: u32,
}

/// One garment.
#[derive(Clone, Debug)]
pub struct Garment {
    /// Its label.
    pub label: Text,
    /// The file it was read from; with the label, its identity within a run.
    pub file: String,
    /// Arm or leg.
    pub limb: Limb,
    /// Its style, as `sleeve`.
    pub style: Option<Text>,
    /// Its distal end.
    pub from: Landmark,
    /// Its proximal end.
    pub to: Landmark,
    /// The class claimed.
    pub claim: Option<Claim>,
    /// Its materials; none = unknown.
    pub materials: Option<Vec<Text>>,
    /// Whether it has a hand part; none = not stated.
    pub hand_part: Option<bool>,
    /// Its fabric.
    pub fabric: Option<Fabric>,
    /// Landmarks where it is of another fabric.
    pub fabric_at: Vec<(Landmark, Fabric)>,
    /// Layers of the fabric.
    pub layers: u32,
    /// Girths when relaxed, distal to proximal.
    pub relaxed: Vec<(Landmark, Relaxed)>,
    /// The band at its upper end, where it is stated.
    pub top_edge: Option<TopEdge>,
}

impl Garment {
    /// The relaxed girth of a landmark.
    pub fn relaxed_at(&self, landmark: Landmark) -> Option<Relaxed> {
        self.relaxed.iter().find(|(one, _)| *one == landmark).map(|(_, girth)| *girth)
    }

    /// The fabric at a landmark.
    pub fn fabric_at(&self, landmark: Landmark) -> Option<&Fabric> {
        let own = self.fabric_at.iter().find(|(one, _)| *one == landmark).map(|(_, fabric)| fabric);
        own.or(self.fabric.as_ref())
    }

    /// Every fabric in it, each once.
    pub fn fabrics(&self) -> Vec<&Fabric> {
        let edge = self.top_edge.as_ref().and_then(|edge| edge.fabric.as_ref());
        let all = self.fabric.iter().chain(self.fabric_at.iter().map(|(_, fabric)| fabric)).chain(edge);
        let mut found: Vec<&Fabric> = Vec::new();
        for fabric in all {
            if !found.iter().any(|other| other.is_same(fabric)) {
                found.push(fabric);
            }
        }
        found
    }
}
