//! Finding `readings-elsewhere`: readings belong to a size that is not the one in question.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "readings-elsewhere",
    title: "Readings of another size",
    meaning: "Sensor readings name a size of the chart that is not shown here.",
    rule: "A note; they say nothing of the size that is shown, and are not used for it.",
    basis: Basis::HouseRule,
    source: "",
};

/// The size that was read, and what was read, as said (`26 mmHg at the wrist`).
pub fn readings_elsewhere(place: Place, size: &str, read: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place)
        .say(format!(
            "Read under size {size}, which is not in question here: {}. They are not used for another size.",
            words::list(read)
        ))
        .next(
            format!("Look at that size by itself: `tapeline gradient` with `--size {size}`."),
            &[Who::Role(Role::Fitter)],
        )
}
