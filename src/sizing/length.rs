//! Owns the length variant of one size.

use super::SizingInput;
use crate::garment::Size;
use crate::input::Text;
use crate::quantity::{Range, Span, Step};
use crate::record::LengthName;

/// Which length variant of a size takes the limb.
#[derive(Clone, Debug, PartialEq)]
pub enum LengthFit {
    /// The size states no length.
    NotAsked,
    /// The first variant, by its place, that takes every length, and its name.
    Takes {
        /// Its place among the size's variants.
        variant: usize,
        /// Its name; none where the chart names none.
        name: Option<Text>,
    },
    /// These lengths are not known, and a variant may still take the limb.
    Unknown(Vec<LengthName>),
    /// No variant takes the limb.
    None {
        /// The first length that rules variants out.
        name: LengthName,
        /// The limb's length, rounded to the chart's step.
        length: Span,
        /// The ranges of that length in the order of the chart.
        ranges: Vec<Range>,
    },
}

impl LengthFit {
    /// Holds the lengths of a limb against the variants of a size; they are first rounded to the chart's step.
    pub fn of(input: &SizingInput, size: &Size, step: Option<Step>) -> Self {
        if size.variants.is_empty() {
            return Self::NotAsked;
        }
        let known = |name: &LengthName| input.lengths.get(name).map(|length| length.rounded_to(step));
        let takes = |name: &LengthName, range: Range| known(name).map(|length| range.holds(length.tenths()));
        let mut unknown: Vec<LengthName> = Vec::new();
        for (place, variant) in size.variants.iter().enumerate() {
            let answers: Vec<Option<bool>> =
                variant.lengths.iter().map(|(name, range)| takes(name, *range)).collect();
            if answers.iter().all(|answer| *answer == Some(true)) && unknown.is_empty() {
                return Self::Takes { variant: place, name: variant.name.clone() };
            }
            if !answers.contains(&Some(false)) {
                let missing = variant.lengths.iter().filter(|(name, _)| known(name).is_none());
                unknown.extend(missing.map(|(name, _)| *name));
            }
        }
        if !unknown.is_empty() {
            unknown.sort();
            unknown.dedup();
            return Self::Unknown(unknown);
        }
        let all = || size.variants.iter().flat_map(|variant| &variant.lengths);
        let against = all().find_map(|(name, range)| {
            let length = known(name)?;
            (!range.holds(length.tenths())).then_some((*name, length))
        });
        match against {
            Some((name, length)) => {
                let ranges = all().filter(|(other, _)| *other == name).map(|(_, range)| *range).collect();
                Self::None { name, length, ranges }
            }
            None => Self::NotAsked,
        }
    }
}
