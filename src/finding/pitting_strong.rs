//! Finding `pitting-strong`: the swelling keeps a deep dent.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "pitting-strong",
    title: "Strong pitting",
    meaning: "The swelling keeps a deep dent.",
    rule: "Strong pitting is a caution; minor in an early stage is no bar.",
    basis: Basis::Published,
    source: "Lymphoedema Framework 2006",
};

/// The swelling pits strongly.
pub fn pitting_strong(place: Place) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say("The swelling keeps a deep dent: the limb may still lose volume, and a garment ordered now may soon be too large.")
        .next("The therapist considers reducing the limb first.", &[Who::Role(Role::Therapist)])
}
