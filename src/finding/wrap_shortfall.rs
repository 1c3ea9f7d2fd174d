//! Finding `wrap-shortfall`: a wrap may press less than the law says.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "wrap-shortfall",
    title: "A wrap may press less",
    meaning: "A wrap may press less than the law says.",
    rule: "Printed beside every wrap.",
    basis: Basis::Published,
    source: "Garrigues-Ramon 2021, J Wound Care 30:276",
};

/// Said beside a wrap.
pub fn wrap_shortfall(place: Place) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place).say(
        "Bandages were measured up to 42 % below this estimate at the ankle, and lose pressure within hours.",
    )
}
