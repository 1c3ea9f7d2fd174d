//! Finding `reading-in-hollow`: readings rise, or differ from the estimate, by nothing but the one beside the ankle
//! bone.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "reading-in-hollow",
    title: "Reading in the ankle hollow",
    meaning: "The readings rise toward the trunk, and without the one taken in the hollow beside the ankle bone they do not; or that reading alone lies far from the estimate.",
    rule: "A caution: tape and fabric bridge the hollow and a sensor there reads low, so it never rejects a garment alone. Where the readings rise by it the fall stays undecided.",
    basis: Basis::HouseRule,
    source: "",
};

/// `alone` = nothing but the readings is known of the fall.
pub fn reading_in_hollow(place: Place, alone: bool) -> Finding {
    let beside = if alone { "" } else { " The garment's own figures do not show it." };
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "The readings rise toward the trunk only by the one taken in the hollow beside the ankle bone, where a sensor reads low.{beside}"
        ))
        .next(
            "Read again at the front or the side of the ankle before it is worn.",
            &[Who::Role(Role::Fitter), Who::Role(Role::Therapist)],
        )
}

/// It alone lies far from the estimate; both as said, in mmHg.
pub fn hollow_differs(place: Place, read: &str, estimated: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "The reading taken in the hollow beside the ankle bone is {read}, {estimated} are estimated; a sensor reads low there."
        ))
        .next(
            "Read again at the front or the side of the ankle.",
            &[Who::Role(Role::Fitter), Who::Role(Role::Therapist)],
        )
}
