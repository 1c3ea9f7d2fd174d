//! Finding `other-limb-item`: an answer is about an item that this limb does not have.

use super::{Entry, Finding, Place};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "other-limb-item",
    title: "Item of the other limb",
    meaning: "An answer is about an item that this limb does not have.",
    rule: "A note; it decides nothing.",
    basis: Basis::HouseRule,
    source: "",
};

/// Items that do not apply to this limb, by their names.
pub fn other_limb_item(place: Place, items: &[String]) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place)
        .say(format!("Not a question of this limb, so not used: {}.", words::list(items)))
}

/// Arterial values of an arm.
pub fn arterial_on_arm(place: Place) -> Finding {
    Finding::of(&ENTRY, Severity::Note, place)
        .say("Arterial values are recorded for an arm; they are not used.")
}
