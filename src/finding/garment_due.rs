//! Finding `garment-due`: a garment in use is due for something.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "garment-due",
    title: "Garment due",
    meaning: "A garment in use is due for something.",
    rule: "Re-check 4 to 6 weeks after it is given, then every 3 to 6 months; renewal by number and wear.",
    basis: Basis::Published,
    source: "Lymphoedema Framework 2006; RAL service life",
};

/// What is due, as said.
pub fn garment_due(place: Place, what: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place).say(format!("{what}.")).next(
        "Look at garment and limb at this visit; measure again before a new one is ordered.",
        &[Who::Role(Role::Therapist), Who::Role(Role::Fitter)],
    )
}
