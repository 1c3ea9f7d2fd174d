//! Finding `swelling-beyond`: the swelling goes beyond the garment.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "swelling-beyond",
    title: "Swelling beyond the garment",
    meaning: "The swelling goes beyond the garment.",
    rule: "Breast, trunk or genitals: a caution, fluid can be moved there.",
    basis: Basis::Memory,
    source: "",
};

/// Swelling of breast, trunk or genitals is recorded.
pub fn swelling_beyond(place: Place) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say("The swelling goes beyond the garment (breast, trunk or genitals); a garment can move fluid there.")
        .next("The therapist watches that part and treats it too.", &[Who::Role(Role::Therapist)])
}
