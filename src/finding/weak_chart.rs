//! Finding `weak-chart`: the chart takes limbs that it cannot know.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Role, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "weak-chart",
    title: "Chart knows little",
    meaning: "The chart takes limbs that it cannot know.",
    rule: "One girth only, or a range wider than 40 % of its middle.",
    basis: Basis::HouseRule,
    source: "",
};

/// Why, as said.
pub fn weak_chart(place: Place, why: &str) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("This chart knows little of the limb: {why}."))
        .next("A certified fitter checks the fit at every mark.", &[Who::Role(Role::Fitter)])
}
