//! Owns what holds for a size of a chart on a limb of which only girths are known: no client, no prescription.

use super::size_findings::{Garments, of_estimate};
use crate::estimate::{Estimated, OnLimb};
use crate::finding::{Finding, Place};
use crate::garment::{Garment, Outfit, Piece};
use crate::rules::Rules;

/// A size on such a limb.
#[derive(Clone, Copy, Debug)]
pub struct SizeAlone<'a> {
    /// The limb.
    pub on: OnLimb<'a>,
    /// The size as a garment.
    pub garment: &'a Garment,
    /// Its estimate.
    pub estimated: &'a Estimated,
}

/// The findings of the size's estimate, as `check` has them where the record says nothing more.
pub fn of_size_alone(size: SizeAlone<'_>, rules: &Rules) -> Vec<Finding> {
    let outfit = Outfit::of(Piece::Garment(Box::new(size.garment.clone())));
    let what = Garments {
        on: size.on,
        outfit: &outfit,
        estimated: size.estimated,
        decide: &[],
        readings: &[],
        wanted: None,
        name: size.garment.label.as_str(),
        to_obtain: true,
    };
    of_estimate(&what, Place::limb(0).chart(0).size(0), rules)
}
