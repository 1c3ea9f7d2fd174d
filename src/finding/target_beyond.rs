//! Finding `target-beyond`: the wanted pressure asks for more stretch than the fabric was tested for.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "target-beyond",
    title: "Wanted pressure asks too much",
    meaning: "The wanted pressure asks for more stretch than the fabric was tested for.",
    rule: "Cleared first by a fitter.",
    basis: Basis::HouseRule,
    source: "",
};

/// Marks as said.
pub fn target_beyond(place: Place, marks: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place)
        .say(format!(
            "The wanted pressure asks for more stretch than the fabric was tested for: {}.",
            words::list(marks)
        ))
        .next(
            "A certified fitter takes a stiffer fabric, or a curve tested further.",
            &[Who::Role(Role::Fitter)],
        )
}
