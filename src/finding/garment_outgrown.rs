//! Finding `garment-outgrown`: a girth has left the range of the size worn.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};
use crate::words;
use jiff::civil::Date;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "garment-outgrown",
    title: "Garment no longer fits",
    meaning: "A girth has left the range of the size worn, or the limb has grown since the garment was fitted.",
    rule: "A caution: the garment is looked at again.",
    basis: Basis::Derived,
    source: "",
};

/// As said (`0.8 cm above size 3 at the forearm`).
pub fn garment_outgrown(place: Place, garment: &str, what: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("By today's girths this garment no longer fits: {garment}, {}.", words::list(what)))
        .next(
            "Look at the garment on the limb before it is worn on.",
            &[Who::Role(Role::Therapist), Who::Role(Role::Fitter)],
        )
}

/// The limb has grown since the garments in use were fitted on `on`, by more than measuring explains.
pub fn limb_outgrown(place: Place, on: Date, percent: f64, explained: f64) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "The limb has grown by {} % since the garment in use was fitted ({}); measuring explains up to {} %.",
            words::trimmed(percent, 1),
            words::date_short(on),
            words::trimmed(explained, 1)
        ))
        .next(
            "Look at the garment on the limb before it is worn on.",
            &[Who::Role(Role::Therapist), Who::Role(Role::Fitter)],
        )
}
