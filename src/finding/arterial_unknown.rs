//! Finding `arterial-unknown`: nothing is known of the arteries of the leg.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "arterial-unknown",
    title: "Arteries not assessed",
    meaning: "Nothing is known of the arteries of the leg.",
    rule: "Above 20 mmHg, or with an arterial item, diabetes or kidney failure present or open, cleared first; otherwise a caution. No role lifts it: a value or an assessment is needed.",
    basis: Basis::Published,
    source: "a UK hosiery guide; British Lymphology Society 2018",
};

/// Why nothing known of the arteries is enough.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WhyUnknown {
    /// The pressure in question, mmHg: low enough for a caution, or too high without a value.
    Pressure(f64),
    /// The pressure in question has no known upper end.
    OpenEnd,
    /// An item of circulation, diabetes or kidney failure is present or open.
    Item,
}

/// No route to a garment on a leg; `given` = some value or assessment is recorded.
pub fn arterial_unknown(place: Place, severity: Severity, given: bool, why: WhyUnknown) -> Finding {
    let lead = if given {
        "The arterial values given are no route to a garment"
    } else {
        "No arterial value and no assessment of this leg is recorded"
    };
    let message = match (why, severity) {
        (WhyUnknown::Pressure(held), Severity::Caution) => {
            format!("{lead}; up to {} are in question.", words::mmhg(held))
        }
        (WhyUnknown::Pressure(held), _) => {
            format!("{lead}, and up to {} are in question.", words::mmhg(held))
        }
        (WhyUnknown::OpenEnd, _) => format!("{lead}, and the pressure in question has no known upper end."),
        (WhyUnknown::Item, _) => {
            format!("{lead}, and an item of circulation, diabetes or kidney failure is present or open.")
        }
    };
    Finding::of(&ENTRY, severity, place).say(message).next(
        "Take an ankle-brachial index or a toe pressure, or have the arteries assessed, and write it down.",
        &[
            Who::Role(Role::Therapist),
            Who::Role(Role::Podiatry),
            Who::Role(Role::Physician),
            Who::Role(Role::Vascular),
        ],
    )
}
