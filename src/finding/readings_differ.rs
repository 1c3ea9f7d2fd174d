//! Finding `readings-differ`: sensor readings and the estimate contradict each other.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "readings-differ",
    title: "Readings against estimate",
    meaning: "Sensor readings and the estimate contradict each other: in a pressure, or about the fall.",
    rule: "At a mark they lie further apart than 1.96 times the root of the squares of the reading's SD and that of the estimate as worn; or one of them rises likely or certainly and the other falls. Both are shown, the worse counts. A reading in the hollow beside the ankle bone is not among them.",
    basis: Basis::HouseRule,
    source: "",
};

/// `sentence` says where they differ.
pub fn readings_differ(place: Place, sentence: &str) -> Finding {
    Finding::of(&ENTRY, Severity::ClearFirst, place).say(sentence).next(
        "A certified fitter or the therapist finds out which is right: read again, and lay the garment flat and measure its widths again.",
        &[Who::Role(Role::Fitter), Who::Role(Role::Therapist)],
    )
}
