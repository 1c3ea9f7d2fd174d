//! Finding `worn-pressure`: a garment in use presses otherwise than it should by today's girths.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity, Urgency};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "worn-pressure",
    title: "Garment in use presses otherwise",
    meaning: "By today's girths a garment in use presses below or above the class that it claims, above the limit of pressure, or rises toward the trunk. Nothing is taken off for wear.",
    rule: "The estimate of the same garment on today's limb: the chance of its class under the number class-chance, a mark above the number pressure-limit, or a likely or certain rise.",
    basis: Basis::HouseRule,
    source: "",
};

const WHO: [Who; 2] = [Who::Role(Role::Therapist), Who::Role(Role::Fitter)];

/// It presses too little; `what` is a sentence.
pub fn too_low(place: Place, what: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(what)
        .next("Look at the garment on the limb; measure the limb again before a new one is ordered.", &WHO)
}

/// It presses too much, or rises; `what` is a sentence.
pub fn too_high(place: Place, what: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place).urgency(Urgency::Soon).say(what).next(
        "Look at the garment on the limb before it is worn on; it comes off at numbness, pain or a colour that changes.",
        &WHO,
    )
}
