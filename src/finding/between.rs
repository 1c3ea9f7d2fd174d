//! Finding `between`: the girths lie between two sizes.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "between",
    title: "Between two sizes",
    meaning: "The girths lie between two sizes.",
    rule: "A fitter decides; a size picked by the chart's own rule stays between.",
    basis: Basis::HouseRule,
    source: "",
};

/// The two sizes, with their pressures where they are known, as said; `picked` by the chart's rule.
pub fn between(place: Place, small: &str, large: &str, picked: Option<&str>) -> Finding {
    let message = match picked {
        Some(size) => format!(
            "The girths lie between {small} and {large}. The chart's own rule picks size {size}; not every girth lies in it."
        ),
        None => format!("The girths lie between {small} and {large}."),
    };
    Finding::of(&ENTRY, Severity::ClearFirst, place).say(message).next(
        "A certified fitter or the therapist decides between the two.",
        &[Who::Role(Role::Fitter), Who::Role(Role::Therapist)],
    )
}
