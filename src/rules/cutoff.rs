//! Owns the two cut-offs of an excess by limb and dominance.

use super::Basis;
use crate::anatomy::Limb;

/// Two cut-offs: none to mild below the first, severe from the second on.
#[derive(Clone, Debug)]
pub struct Cutoff {
    /// Arm or leg.
    pub limb: Limb,
    /// Whether the swollen arm is the dominant one; none = it does not matter (leg).
    pub dominant: Option<bool>,
    /// From this excess on moderate, a share of the other limb.
    pub moderate: f64,
    /// From this excess on severe, a share of the other limb.
    pub severe: f64,
    /// What it rests on.
    pub basis: Basis,
    /// Where it was read.
    pub source: String,
}
