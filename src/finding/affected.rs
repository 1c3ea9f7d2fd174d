//! Finding `affected`: the limb to be fitted is not the affected one.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "affected",
    title: "Side not affected",
    meaning: "The limb to be fitted is not the affected one.",
    rule: "Asked before any outcome; answered by `affected` under `confirmed`.",
    basis: Basis::HouseRule,
    source: "",
};

/// A garment is asked for on a side that is not recorded as affected; `other` is the affected limb where the record
/// fits both, for then this side may have been measured only to compare.
pub fn affected(place: Place, fitted: &str, recorded: &str, other: Option<&str>) -> Finding {
    let next = match other {
        Some(other) => format!(
            "Check the side. A limb that is measured only to compare stands under `other_limb` in a record of the {other}."
        ),
        None => "Check the side. If the other limb is meant to be fitted, say so in the record.".to_owned(),
    };
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("The record measures the {fitted} to be fitted, but says that {recorded} affected."))
        .next(next, &[Who::Recorder])
        .asks("affected")
}
