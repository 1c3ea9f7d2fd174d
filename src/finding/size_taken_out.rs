//! Finding `size-taken-out`: a size takes every girth, but its pressure certainly rises.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "size-taken-out",
    title: "Size taken out",
    meaning: "A size takes every girth, but its pressure certainly rises toward the trunk, a tourniquet effect.",
    rule: "By stretch alone, or by 3 mmHg or more above a mark below: the size is no choice.",
    basis: Basis::HouseRule,
    source: "any rise counts as a reversal: Best 2000, JBJS Br 82-B:116",
};

/// The size's label and the sentence about its fall.
pub fn size_taken_out(place: Place, size: &str, sentence: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("Size {size} takes every girth and is taken out all the same. {sentence}"))
        .next(
            "A certified fitter takes a made-to-measure order, or another chart.",
            &[Who::Role(Role::Fitter)],
        )
}
