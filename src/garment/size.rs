//! Owns one size of a chart.

use super::Relaxed;
use crate::anatomy::Landmark;
use crate::input::Text;
use crate::quantity::Range;
use crate::record::LengthName;

/// One size.
#[derive(Clone, Debug)]
pub struct Size {
    /// Its label.
    pub label: Text,
    /// Limb girths it is made for, distal to proximal.
    pub girths: Vec<(Landmark, Range)>,
    /// Girths of the garment when relaxed, distal to proximal.
    pub relaxed: Vec<(Landmark, Relaxed)>,
    /// Length variants, in the order of the file; empty = one length for all.
    pub variants: Vec<Variant>,
}

impl Size {
    /// The range of a landmark.
    pub fn range_at(&self, landmark: Landmark) -> Option<Range> {
        self.girths.iter().find(|(one, _)| *one == landmark).map(|(_, range)| *range)
    }

    /// The relaxed girth of a landmark.
    pub fn relaxed_at(&self, landmark: Landmark) -> Option<Relaxed> {
        self.relaxed.iter().find(|(one, _)| *one == landmark).map(|(_, girth)| *girth)
    }
}

/// One length variant of a size.
#[derive(Clone, Debug)]
pub struct Variant {
    /// Its name; none where a chart has but one.
    pub name: Option<Text>,
    /// The lengths it is made for.
    pub lengths: Vec<(LengthName, Range)>,
}
