//! Finding `reduce-first`: strong pitting stands beside folds.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "reduce-first",
    title: "Reduce first",
    meaning: "Strong pitting stands beside folds.",
    rule: "A caution beside the made-to-measure outcome that folds bring.",
    basis: Basis::Published,
    source: "Lymphoedema Framework 2006",
};

/// Strong pitting and folds.
pub fn reduce_first(place: Place) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say("Strong pitting and folds: the limb is usually reduced by bandaging before a garment is measured.")
        .next("The therapist decides whether to reduce the limb first.", &[Who::Role(Role::Therapist)])
}
