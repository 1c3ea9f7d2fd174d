//! Finding `shape-irregular`: folds or a distorted shape are recorded.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "shape-irregular",
    title: "Folds or distorted shape",
    meaning: "Folds or a distorted shape are recorded.",
    rule: "Folds or distortion ask for made to measure, flat knit preferred, on every chart.",
    basis: Basis::Published,
    source: "Lymphoedema Framework 2006",
};

/// What was seen: `folds`, `a distorted shape`.
pub fn shape_irregular(place: Place, seen: &[&str]) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "Recorded: {}. A stock garment folds and cuts in there; made to measure, flat knit preferred.",
            words::list(seen)
        ))
        .next("A certified fitter takes a made-to-measure order.", &[Who::Role(Role::Fitter)])
}
