//! Owns one size of a chart.

use crate::anatomy::{Between, Landmark};
use crate::quantity::{Girth, Range};

/// One size.
#[derive(Clone, Debug)]
pub struct Size {
    /// Its label.
    pub label: String,
    /// Limb girths it is made for, distal to proximal.
    pub girths: Vec<(Landmark, Range)>,
    /// Girths of the garment when relaxed, distal to proximal.
    pub relaxed: Vec<(Landmark, Girth)>,
    /// Length variants, in the order of the file; empty = one length for all.
    pub variants: Vec<Variant>,
}

impl Size {
    /// The relaxed girth of a landmark.
    pub fn relaxed_at(&self, landmark: Landmark) -> Option<Girth> {
        self.relaxed.iter().find(|(one, _)| *one == landmark).map(|(_, girth)| *girth)
    }
}

/// One length variant of a size.
#[derive(Clone, Debug)]
pub struct Variant {
    /// Its name; none where a chart has but one.
    pub name: Option<String>,
    /// The lengths it is made for.
    pub lengths: Vec<(Between, Range)>,
}
