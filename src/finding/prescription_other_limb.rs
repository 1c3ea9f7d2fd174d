//! Finding `prescription-other-limb`: the prescription names a scheme for another limb.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "prescription-other-limb",
    title: "Prescription for another limb",
    meaning: "The prescription names a scheme for another limb.",
    rule: "Cleared first by the prescriber; it counts as no prescription.",
    basis: Basis::HouseRule,
    source: "",
};

/// `scheme` is printed, `limb` is arm or leg.
pub fn prescription_other_limb(place: Place, scheme: &str, limb: &str) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say(format!("The prescription names {scheme}, which has no classes for the {limb}."))
        .next("Ask the prescriber which pressure is meant.", &[Who::Role(Role::Prescriber)])
}
