//! Owns which relaxed girths are known and are still not held against the others: unlike knits of which one has no
//! curve.
//!
//! Source: gradient rule: by ruler unlike knits are not judged across, each piece is within itself.

use super::lying::Lying;
use crate::anatomy::Landmark;

/// What is known and is not held against the rest.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unheld {
    /// Pieces whose knit has no curve there, by their places.
    pub pieces: Vec<usize>,
    /// Where.
    pub landmarks: Vec<Landmark>,
}

impl Unheld {
    /// Of the places of one fall; none where all can be held against each other.
    pub(super) fn of(places: &[(Landmark, Vec<Lying<'_>>)]) -> Option<Self> {
        let lying = || places.iter().flat_map(|(_, lying)| lying);
        let without = |lying: &[Lying<'_>]| lying.iter().any(|one| !one.is_estimable());
        let found: Vec<&(Landmark, Vec<Lying<'_>>)> = if lying().any(Lying::is_estimable) {
            places.iter().filter(|(_, lying)| without(lying)).collect()
        } else {
            let first = lying().next()?.number();
            if lying().all(|one| one.number() == first) { Vec::new() } else { places.iter().collect() }
        };
        let mut pieces: Vec<usize> = found
            .iter()
            .flat_map(|(_, lying)| lying.iter().filter(|one| !one.is_estimable()).map(Lying::piece))
            .collect();
        pieces.sort_unstable();
        pieces.dedup();
        let landmarks = found.iter().map(|(landmark, _)| *landmark).collect();
        (!found.is_empty()).then_some(Self { pieces, landmarks })
    }
}
