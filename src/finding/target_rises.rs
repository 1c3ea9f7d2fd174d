//! Finding `target-rises`: the wanted pressure does not fall toward the trunk.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "target-rises",
    title: "Wanted pressure does not fall",
    meaning: "The wanted pressure does not fall toward the trunk.",
    rule: "Cleared first by the prescriber.",
    basis: Basis::HouseRule,
    source: "",
};

/// As said.
pub fn target_rises(place: Place, what: &str) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say(format!("The wanted pressure does not fall toward the trunk: {what}."))
        .next("Ask the prescriber for a falling pressure.", &[Who::Role(Role::Prescriber)])
}
