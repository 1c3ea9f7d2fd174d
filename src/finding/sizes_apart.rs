//! Finding `sizes-apart`: marks ask for sizes two or more apart.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "sizes-apart",
    title: "Marks ask for distant sizes",
    meaning: "Marks ask for sizes two or more apart.",
    rule: "A caution; a rules file may raise it.",
    basis: Basis::HouseRule,
    source: "",
};

/// As said (`the wrist asks for size 2, the axilla for size 4`).
pub fn sizes_apart(place: Place, what: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("The marks ask for distant sizes: {what}."))
        .next(
            "A certified fitter looks at the shape; made to measure may serve better.",
            &[Who::Role(Role::Fitter)],
        )
}
