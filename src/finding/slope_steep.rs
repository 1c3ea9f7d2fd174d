//! Finding `slope-steep`: the girth changes fast along the limb.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "slope-steep",
    title: "Steep shape",
    meaning: "The girth changes fast along the limb.",
    rule: "From 1.5 cm per cm of length a caution, from 2.5 said strongly. A rules file may raise it.",
    basis: Basis::HouseRule,
    source: "",
};

/// Pairs as said.
pub fn slope_steep(place: Place, pairs: &[String], strong: bool) -> Finding {
    let how = if strong { "very fast" } else { "fast" };
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("The girth changes {how} along the limb: {}.", words::list(pairs)))
        .next("A certified fitter looks at the shape there.", &[Who::Role(Role::Fitter)])
}
