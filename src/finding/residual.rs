//! Finding `residual`: the residual pressure at a mark lies outside the scheme's limits.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "residual",
    title: "Residual pressure outside limits",
    meaning: "The residual pressure at a mark lies outside the scheme's limits.",
    rule: "A note; a caution when outside with a chance of 0.95.",
    basis: Basis::Published,
    source: "",
};

/// As said (`68 % of the ankle at the calf; the scheme asks for 50 to 80 %`).
pub fn residual(place: Place, severity: Severity, what: &str) -> Finding {
    let found = Finding::of(&ENTRY, severity, place).say(format!("Residual pressure: {what}."));
    found.next("A certified fitter looks at the fall there.", &[Who::Role(Role::Fitter)])
}
