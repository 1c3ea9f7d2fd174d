//! Finding `hand-part`: the hand or foot is swollen and this garment has no part for it.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "hand-part",
    title: "No hand or foot part",
    meaning: "The hand or foot is swollen and this garment has no part for it.",
    rule: "Cleared first by a fitter or therapist, unless another part of the set has it.",
    basis: Basis::Published,
    source: "Lymphoedema Framework 2006",
};

/// `part` is `hand` or `foot`; `known` when the chart says that it has none.
pub fn hand_part(place: Place, part: &str, known: bool) -> Finding {
    let what = if known { "has no part for it" } else { "does not say whether it has a part for it" };
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say(format!("The {part} is swollen and this garment {what}: fluid would gather in the {part}."))
        .next(
            format!("A certified fitter or the therapist adds a {part} part, or clears it."),
            &[Who::Role(Role::Fitter), Who::Role(Role::Therapist)],
        )
}
