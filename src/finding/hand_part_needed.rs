//! Finding `hand-part-needed`: the hand or the foot is swollen.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "hand-part-needed",
    title: "Hand or foot part needed",
    meaning: "The hand or the foot is swollen.",
    rule: "A note of the client whatever the sizing says; each chart without such a part is cleared first.",
    basis: Basis::Published,
    source: "Lymphoedema Framework 2006",
};

/// `part` is `hand` or `foot`.
pub fn hand_part_needed(place: Place, part: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place).say(format!(
        "The {part} is swollen: whatever is worn needs a {part} part, or a piece of its own for the {part}."
    ))
    .next(format!("Order a {part} part with the garment."), &[Who::Role(Role::Fitter)])
}
